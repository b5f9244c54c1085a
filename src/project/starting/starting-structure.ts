import { pitchIn12Of } from '../../values/index.js'
import { follows, put, type Given } from './given.js'
import { MADE_UP_PLANE, type StartingHouse, type StartingPlane } from './starting-house.js'
import { runFt } from './starting-site-plan.js'

/** What wind, snow and rafters are; safety inputs, so each has a marker of its own. */
export function structureLines({ planes, rail = 'rail40', mount = 'flashed_foot' }: StartingHouse): string[] {
  const [first = MADE_UP_PLANE] = planes
  const { eaveHeightFt, widthFt, ridgeFt } = first
  const run = runFt(first)
  const height = follows((eave, across, slope) => eave + (across * slope) / 24, eaveHeightFt, run, pitchOf(first))
  return [
    'structure:  # look into the attic and ask the building department',
    '  wind:',
    '    basic_speed_mph: !made_up 115  # from the hazard map of the load standard, or the building department',
    '    exposure: !made_up B  # B town and wood, C open country, D at the water',
    `    mean_roof_height_ft: ${put({ ...height, madeUp: true })}`,
    '    hill_or_escarpment: !made_up false',
    '    special_wind_region: !made_up false',
    '  snow:',
    '    ground_psf: !made_up 20  # ask the building department',
    '    ground_basis: !made_up allowable',
    '    roof_exposure: !made_up partially_exposed',
    '    thermal: !made_up heated',
    '  building:',
    `    length_ft: ${put(widthFt)}`,
    `    width_ft: ${put({ value: Math.round(2 * run.value * 10) / 10, madeUp: true })}`,
    '    enclosure: !made_up enclosed',
    `    roof_kind: ${put(ridgeFt.value < widthFt.value ? { value: 'hip', madeUp: ridgeFt.madeUp } : { value: 'gable', madeUp: ridgeFt.madeUp })}`,
    '  seismic:',
    '    dwelling: one_two_family',
    '    design_category: !made_up B  # ask the building department',
    `  rail: ${rail}`,
    `  mount: ${mount}`,
    '  mount_layout: staggered',
    '  framing:  # measured in the attic, plane by plane',
    ...(planes.length === 0 ? [MADE_UP_PLANE] : planes).flatMap(({ id, ...plane }) => [
      `    ${id}:`,
      '      kind: !made_up rafter',
      `      nominal_size: !made_up ${sizeFor(spanOf({ id, ...plane }))}`,
      '      species: !made_up Douglas Fir-Larch  # on the grade stamp of the wood',
      '      grade: !made_up No. 2',
      '      spacing_in: !made_up 16',
      '      first_offset_in: !made_up 8  # from the left edge of the plane to the middle of the first rafter',
      '      direction: !made_up up_slope',
      `      span_ft: ${put({ value: spanOf({ id, ...plane }), madeUp: true })}  # level, from the inside of the wall to the ridge or the next support`,
      '      eave_overhang_in: !made_up 12',
      '      rake_overhang_in: !made_up 6',
      '      sheathing_in: !made_up 0.5',
      '      covering: !made_up asphalt_shingle',
      '      covering_in: !made_up 0.25',
      '      existing_dead_psf: !made_up 10  # weight of the roof as it is',
      '      ceiling_attached: !made_up false',
      '      ridge: !made_up board',
      '      ties: !made_up ceiling_joists',
      '      wet_service: !made_up false',
      '      sustained_temperature: !made_up up_to_125_f',
    ]),
  ]
}

/** Rise in 12 of run. */
function pitchOf({ tilt, tiltKey }: StartingPlane): Given {
  return tiltKey === 'tilt_deg' ? follows(pitchIn12Of, tilt) : tilt
}

/** Most of the way to the ridge, level, ft: made up, so that the first look at a result has a rafter of a likely size. */
function spanOf(plane: StartingPlane): number {
  return Math.max(2, Math.floor(runFt(plane).value) - 1)
}

function sizeFor(spanFt: number): string {
  return spanFt <= 13 ? '2x8' : spanFt <= 16 ? '2x10' : '2x12'
}
