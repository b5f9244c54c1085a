import { GRAVITY_INCREASE_LIMIT_PCT, RIDGE_BOARD_FROM_RISE, ROOF_LIVE_LOAD_PSF } from '../../tables/irc/index.js'
import { lumberGrades, lumberSource } from '../../tables/nds/index.js'
import { poundFeetOf, radiansOf, type PoundsPerSquareFoot } from '../../values/index.js'
import type { Source, Worksheet } from '../../worksheet/index.js'
import { gravityChangePct } from '../loads/index.js'
import { planeAreaFt2 } from '../model/index.js'
import {
  LOWEST_USUAL,
  placeOf,
  rafterThrust,
  seatOf,
  tieFactor,
  worstCheck,
  type CheckedRafter,
  type FramingSpec,
  type RafterCheck,
  type RafterInput,
  type RafterResult,
  type WoodStrength,
} from '../rafters/index.js'
import type { PlaneModel } from './plane-model.js'
import type { PlaneRafters } from './plane-rafters.js'
import { reportTableSpan } from './report-table-span.js'

/** The rafters of one plane after their check. */
export interface RaftersToReport extends PlaneRafters {
  /** Id of the plane. */
  readonly id: string
  /** Title and date of the document that the rafters stand on, when there is one. */
  readonly covered: string | undefined
}

const IRC = (place: string, standing: Source['standing'] = 'secondary'): Source => ({
  document: 'IRC 2021',
  place,
  standing,
})

/** Writes steps and findings of the rafters of one plane. */
export function reportRafters(rafters: RaftersToReport, worksheet: Worksheet): void {
  const { id, input, result } = rafters
  reportCodePath(rafters, worksheet)
  reportSupports(id, input.framing, worksheet)
  reportSharing(id, input.framing, worksheet)
  if (result.wood === undefined) {
    reportNotChecked(rafters, worksheet)
    return
  }
  reportSeat(id, input, worksheet)
  const bending = worstCheck(result.rafters, 'bending')
  if (bending === undefined) return
  reportBending(rafters, result.wood, bending, worksheet)
  reportOthers(id, result, worksheet)
  reportThrust(rafters, result.wood, bending, worksheet)
  reportTableSpan(id, input, worksheet)
  reportCodeLets(rafters, worksheet)
  reportLift(rafters, worksheet)
}

/** What wind from below asks of the joint to the wall. */
function reportLift({ id, result }: RaftersToReport, worksheet: Worksheet): void {
  const lift = Math.max(...result.rafters.map((rafter) => rafter.upliftAtWallLb))
  if (lift < 1) return
  worksheet.find({
    severity: 'note',
    id: 'structure.rafter-uplift-tie',
    message: `plane '${id}': wind lifts the hardest rafter off the wall with ${Math.ceil(lift)} lb (0.6D + 0.6W); the joint of rafter and wall is not checked here`,
    where: `structure.framing.${id}`,
    fix: 'Look for metal ties between rafters and wall plate, and have them checked where there are only nails.',
  })
}

/** The governing bending: strength, stress, and every combination line by line. */
function reportBending(
  { id, input }: RaftersToReport,
  wood: WoodStrength,
  { rafter, check }: { rafter: CheckedRafter; check: RafterCheck },
  worksheet: Worksheet,
): void {
  const path = `structure.framing.${id}`
  const { factors } = wood
  const tie = tieFactor(input.framing)
  worksheet.step({
    id: `structure.${id}.rafter-strength`,
    says: `Bending strength of the rafters for ${check.combination}`,
    formula: `Fb' = Fb CD CL CF Cr CM Ct Ci${tie < 1 ? ' K' : ''}`,
    inputs: [
      {
        symbol: 'Fb',
        value: wood.reference.bendingPsi,
        unit: 'psi',
        from: `NDS Supplement, ${wood.species} ${wood.grade}`,
      },
      { symbol: 'CD', value: check.loadDuration, unit: '', from: 'table 2.3.2, the shortest load that is there' },
      {
        symbol: 'CL',
        value: check.stability,
        unit: '',
        from:
          check.stability < 1
            ? '3.3.3, the lower edge is pressed and not held'
            : '3.3.3.1, sheathing holds the upper edge',
      },
      { symbol: 'CF', value: factors.size, unit: '', from: `${path}.nominal_size` },
      { symbol: 'Cr', value: factors.repetitive, unit: '', from: `${path}.spacing_in` },
      { symbol: 'CM', value: factors.wetBending, unit: '', from: `${path}.wet_service` },
      { symbol: 'Ct', value: factors.temperature, unit: '', from: `${path}.sustained_temperature` },
      { symbol: 'Ci', value: factors.incised, unit: '', from: `${path}.incised` },
      ...(tie < 1 ? [{ symbol: 'K', value: tie, unit: '', from: 'IRC table R802.4.1(9), raised ties, squared' }] : []),
    ],
    result: { symbol: "Fb'", value: check.capacity, unit: 'psi' },
    source: lumberSource(wood.species),
    limits: 'current design values; the wood is sound, and not notched between its supports',
  })
  worksheet.step({
    id: `structure.${id}.rafter-stress`,
    says: `Bending stress of ${placeOf(id, rafter.number, check.place)}, ${check.atFt.toFixed(2)} ft from its lower support`,
    formula: 'fb = M / S, S = b d^2 / 6',
    inputs: [
      { symbol: 'M', value: poundFeetOf(Math.abs(check.action)), unit: 'lb-ft', from: check.combination },
      { symbol: 'b', value: wood.breadthIn, unit: 'in', from: `${path}.nominal_size` },
      { symbol: 'd', value: wood.depthIn, unit: 'in', from: `${path}.nominal_size` },
      { symbol: 'S', value: wood.sectionModulusIn3, unit: 'in3', from: 'b and d' },
    ],
    result: { symbol: 'fb', value: check.demand, unit: 'psi' },
    source: { document: 'Statics of a beam', standing: 'read' },
    limits: 'mounts as single forces where they stand; a span as if it ended at its supports, and as if it ran through',
  })
  for (const [index, line] of rafter.lines.entries()) {
    worksheet.step({
      id: `structure.${id}.rafter-combination-${index + 1}`,
      says: `Rafter ${rafter.number}, ${line.name}`,
      formula: "fb = M / S <= Fb', M = sum of each factor times its moment",
      inputs: [
        ...line.shares().map((share) => ({
          symbol: `${plainFactor(share.factor)} M(${share.kind})`,
          value: share.factor * poundFeetOf(share.momentLbIn),
          unit: 'lb-ft',
          from: `${line.atFt.toFixed(2)} ft from the lower support`,
        })),
        { symbol: 'M', value: poundFeetOf(line.momentLbIn), unit: 'lb-ft', from: 'sum' },
        { symbol: 'S', value: wood.sectionModulusIn3, unit: 'in3', from: `structure.${id}.rafter-stress` },
      ],
      result: { symbol: 'fb', value: line.stressPsi, unit: 'psi' },
      check: { relation: '<=', limit: line.allowablePsi, pass: line.stressPsi <= line.allowablePsi },
      source: { document: 'ASCE 7', place: 'section 2.4.1', standing: 'secondary' },
    })
  }
}

const plainFactor = (factor: number): string => String(Number(factor.toFixed(4)))

/** Shear, bearing and deflection at their worst places. */
function reportOthers(id: string, result: RafterResult, worksheet: Worksheet): void {
  const says = {
    shear: [
      'Shear of the rafters, the notch at the wall counted',
      "fv = 1.5 V / (b d) <= Fv'; over a notch 1.5 V / (b dn) (d / dn)^2",
    ],
    bearing: ['Bearing of the rafters across the grain', "R / (b lb) <= Fc-perp'"],
    deflection: ['Deflection of the rafters under the variable load alone', 'D <= span / n'],
  } as const
  for (const name of ['shear', 'bearing', 'deflection'] as const) {
    const worst = worstCheck(result.rafters, name)
    if (worst === undefined) continue
    const { rafter, check } = worst
    worksheet.step({
      id: `structure.${id}.rafter-${name}`,
      says: `${says[name][0]}: ${placeOf(id, rafter.number, check.place)}, ${check.combination}`,
      formula: says[name][1],
      inputs:
        name === 'deflection'
          ? [{ symbol: 'limit', value: check.capacity, unit: 'in', from: 'IRC table R301.7, on the horizontal span' }]
          : [
              { symbol: name === 'shear' ? 'V' : 'R', value: check.action, unit: 'lb', from: 'statics' },
              { symbol: 'limit', value: check.capacity, unit: 'psi', from: 'NDS Supplement with its factors' },
            ],
      result: {
        symbol: name === 'shear' ? 'fv' : name === 'bearing' ? 'fc' : 'D',
        value: check.demand,
        unit: check.unit,
      },
      check: { relation: '<=', limit: check.capacity, pass: check.ratio <= 1 },
      source: name === 'deflection' ? IRC('table R301.7') : lumberSource(result.wood?.species ?? ''),
      limits:
        name === 'shear'
          ? 'not reduced near supports'
          : name === 'bearing'
            ? 'Cb 1; the plate is as hard as the rafter'
            : 'along the slope the same rafter deflects 1 / cos more for its span',
    })
  }
}

/** What is taken of seat and notch where it is not stated, and a notch that is deeper than the code allows. */
function reportSeat(id: string, { framing, plane }: RafterInput, worksheet: Worksheet): void {
  const path = `structure.framing.${id}`
  const seat = seatOf(framing, plane.tiltDeg)
  if (framing.seatIn === undefined) {
    worksheet.assume({
      path: `${path}.seat_in`,
      value: seat.seatIn,
      unit: 'in',
      why: 'the least bearing of a rafter on wood that the code allows',
      source: IRC('R802.6'),
    })
  }
  if (framing.notchIn === undefined && framing.seatIn === undefined) {
    worksheet.assume({
      path: `${path}.notch_in`,
      value: seat.notchIn,
      unit: 'in',
      why: 'the deepest notch at a support that the code allows, a quarter of the depth',
      source: { document: 'NDS 2018', place: '4.4.3', standing: 'from memory' },
    })
  }
  if (seat.notchIn <= seat.deepestIn + 1e-9) return
  worksheet.find({
    severity: 'warning',
    id: 'structure.rafter-notch',
    message: `plane '${id}': the notch of the rafters at the wall is ${seat.notchIn.toFixed(2)} in deep, over a quarter of their depth (${seat.deepestIn.toFixed(2)} in); it is checked with that depth`,
    where: `${path}.${framing.notchIn === undefined ? 'seat_in' : 'notch_in'}`,
    source: { document: 'NDS 2018', place: '4.4.3', standing: 'from memory' },
    fix: 'Measure seat and notch, and show them to a structural engineer.',
  })
}

/** Stated supports that do not count. */
function reportSupports(id: string, { uncounted }: FramingSpec, worksheet: Worksheet): void {
  for (const { number, because } of uncounted) {
    worksheet.find({
      severity: 'warning',
      id: 'structure.rafter-support-not-counted',
      message: `plane '${id}': the support above span ${number} does not count, and the spans beside it are taken as one (${because})`,
      where: `structure.framing.${id}.supports`,
      source: IRC('R802.4.5'),
      fix: 'State for each support its kind, size, braces and what they stand on, as you see them in the attic.',
    })
  }
}

function reportSharing(id: string, { loadSharing: sharing, spacingIn }: FramingSpec, worksheet: Worksheet): void {
  if (sharing === undefined) return
  const least = spacingIn <= 16 ? 0.8 : 0.9
  const isTooLow = sharing.share < least - 1e-9
  worksheet.find({
    severity: isTooLow ? 'error' : 'warning',
    id: 'structure.rafter-load-sharing',
    message: `plane '${id}': ${isTooLow ? `a share of ${sharing.share} that stays in a loaded rafter is under ${least} at ${spacingIn} in spacing` : `the load of a mount is taken to stay in its rafter by ${sharing.share}, the rest in the two beside it, by ${sharing.source}; the repetitive factor is left out for it`}`,
    where: `structure.framing.${id}.load_sharing`,
    fix: 'Leave load_sharing out, or let the engineer behind it state it in a document of the packet.',
  })
}

/** Push of the feet of the rafters, and what holds it. */
function reportThrust(
  { id, input, covered }: RaftersToReport,
  wood: WoodStrength,
  { rafter, check }: { rafter: CheckedRafter; check: RafterCheck },
  worksheet: Worksheet,
): void {
  const { framing, plane } = input
  const path = `structure.framing.${id}`
  if (framing.ridge === 'beam') return
  const line = rafter.lines.find(({ name }) => name === check.combination)
  const isLow = 12 * Math.tan(radiansOf(plane.tiltDeg)) < RIDGE_BOARD_FROM_RISE - 1e-9
  if (framing.ridge === 'board' && (isLow || framing.ties === 'none')) {
    worksheet.find({
      severity: covered === undefined ? 'error' : 'note',
      id: 'structure.rafter-ridge-board',
      message: `plane '${id}': rafters on a ridge board ${isLow ? `under ${RIDGE_BOARD_FROM_RISE}:12` : 'without ties'} need a ridge beam, which is not there${covered === undefined ? '' : `; covered by ${covered}`}`,
      where: `${path}.${isLow ? 'ridge' : 'ties'}`,
      source: IRC('R802.4.4'),
      fix: 'Ask a structural engineer; the walls may spread.',
    })
  }
  if (line === undefined || check.action <= 0) return
  const thrust = rafterThrust(input, wood, rafter.spans, line, check.loadDuration)
  worksheet.step({
    id: `structure.${id}.rafter-thrust`,
    says: `Outward push of a rafter at its foot without a ridge beam, ${check.combination}`,
    formula: 'H = w L / (2 tan slope), w the even load with the same moment',
    inputs: [
      { symbol: 'L', value: thrust.spanFt, unit: 'ft', from: `${path}.span_ft` },
      { symbol: 'slope', value: plane.tiltDeg, unit: 'deg', from: `roof_planes.${id}` },
      { symbol: 'N at the heel', value: thrust.heelLb, unit: 'lb', from: 'H cos + w L sin' },
      { symbol: 'N at the ridge', value: thrust.ridgeLb, unit: 'lb', from: 'H cos' },
      { symbol: 'bending with axial force', value: thrust.interaction, unit: '', from: 'NDS 3.9.2' },
    ],
    result: { symbol: 'H', value: thrust.thrustLb, unit: 'lb' },
    source: { document: 'Statics of a pair of rafters', standing: 'read' },
    limits: 'the nails between rafter and tie are not checked; the span tables of the code leave axial force out too',
  })
  if (framing.ridge === undefined || framing.ties === undefined) {
    worksheet.find({
      severity: covered === undefined ? 'warning' : 'note',
      id: 'structure.rafter-thrust-not-checked',
      message: `plane '${id}': what holds the feet of the rafters is not stated; without a ridge beam each pushes outwards with ${Math.ceil(thrust.thrustLb)} lb (${check.combination}), which ties have to take`,
      where: `${path}.${framing.ridge === undefined ? 'ridge' : 'ties'}`,
      source: IRC('R802.5.2'),
      fix: 'Look in the attic for ceiling joists nailed to the rafters, and state ridge and ties.',
    })
  }
  if (thrust.interaction > 1 && check.ratio <= 1) {
    worksheet.find({
      severity: 'note',
      id: 'structure.rafter-axial',
      message: `plane '${id}': bending alone uses ${(100 * check.ratio).toFixed(0)} % of the hardest rafter, with its axial force ${(100 * thrust.interaction).toFixed(0)} %`,
      where: path,
      source: { document: 'NDS 2018', place: '3.9.2', standing: 'secondary' },
      fix: SHOW_ENGINEER,
    })
  }
  if (framing.ties === 'raised_ties' && (framing.tieHeightShare ?? 1) > 1 / 3) {
    worksheet.find({
      severity: covered === undefined ? 'error' : 'note',
      id: 'structure.rafter-ties-high',
      message: `plane '${id}': ties above a third of the height of the ridge, or at a height that is not stated, are not covered by the code's table`,
      where: `${path}.tie_height_share`,
      source: IRC('table R802.4.1(9)', 'from memory'),
      fix: SHOW_ENGINEER,
    })
  }
}

const SHOW_ENGINEER = 'Show it to a structural engineer.'

/** Rafters whose wood is not known cannot be checked, which is no pass. */
function reportNotChecked({ id, input, result, covered }: RaftersToReport, worksheet: Worksheet): void {
  const { framing } = input
  const { because, lowest } = result.woodMissing ?? { because: '', lowest: undefined }
  const isPair = because.includes('does not come in grade')
  const held = framing.species === undefined ? [] : lumberGrades(framing.species, framing.nominalSize)
  const low =
    lowest === undefined
      ? ''
      : `; if they were ${LOWEST_USUAL.species} ${LOWEST_USUAL.grade}, the lowest usual group, ${(100 * lowest.check.ratio).toFixed(0)} % would be used (${lowest.check.check} at ${placeOf(id, lowest.rafter.number, lowest.check.place)}, ${lowest.check.combination})`
  worksheet.find({
    severity: covered === undefined ? 'error' : 'note',
    id: 'structure.rafter-strength-not-checked',
    message: `plane '${id}': the strength of the rafters is not checked, as ${because}${isPair ? ` (grades held: ${held.join(', ')})` : ''}${low}${covered === undefined ? '' : `; covered by ${covered}`}`,
    where: `structure.framing.${id}.${because.includes('the species') || because.includes('held') ? 'species' : 'grade'}`,
    source: lumberSource(''),
    fix: 'Read species and grade from the stamp on a rafter in the attic and state both. Where no stamp is left, stating the lowest group is your choice; lumber of grade No. 3, Stud or Utility is weaker still.',
  })
}

/** The rule for existing buildings, apart from strength. */
function reportCodePath({ id, input, result }: RaftersToReport, worksheet: Worksheet): void {
  const { codePath } = result
  if (codePath === undefined) return
  const path = `structure.framing.${id}`
  const source: Source = {
    document: 'IEBC 2021',
    place: `805.2, gravity load up by at most ${GRAVITY_INCREASE_LIMIT_PCT} %`,
    standing: 'secondary',
  }
  worksheet.step({
    id: `structure.${id}.rafter-before`,
    says: `Bending moment of a rafter before the array, roof live load or snow: ${placeOf(id, codePath.rafter, codePath.place)}`,
    formula: 'M under (D / cos + larger of roof live load and snow) s',
    inputs: [
      { symbol: 'D', value: input.framing.existingDeadPsf, unit: 'psf', from: `${path}.existing_dead_psf` },
      { symbol: 'Lr', value: input.livePsf, unit: 'psf', from: 'roof live load by slope' },
      { symbol: 's', value: input.framing.spacingIn, unit: 'in', from: `${path}.spacing_in` },
    ],
    result: { symbol: 'M', value: codePath.momentBeforeLbFt, unit: 'lb-ft' },
    source: { document: 'IRC 2018', place: 'table R301.6, roof live load', standing: 'secondary' },
  })
  worksheet.step({
    id: `structure.${id}.rafter-ratio`,
    says: 'Bending of that rafter with the array over its bending before; up to 1.05 no more is asked, whatever its strength',
    formula: 'M with array / M before',
    inputs: [
      {
        symbol: 'M with array',
        value: codePath.momentLbFt,
        unit: 'lb-ft',
        from: 'mounts on the rafter as they are laid out',
      },
      { symbol: 'M before', value: codePath.momentBeforeLbFt, unit: 'lb-ft', from: `structure.${id}.rafter-before` },
      { symbol: 'dead load alone', value: codePath.deadChangePct, unit: '%', from: 'change of its moment' },
      ...codePath.combinations.map(({ name, changePct }) => ({
        symbol: name,
        value: changePct,
        unit: '%',
        from: 'change of its moment',
      })),
    ],
    result: { symbol: 'ratio', value: codePath.momentLbFt / codePath.momentBeforeLbFt, unit: '' },
    source,
    limits:
      'compares new with old load and says nothing about strength; engineers read the 5 % as of each load or of all together',
  })
}

/** Where strength fails and the rule for existing buildings would let it pass, both are said. */
function reportCodeLets({ id, result }: RaftersToReport, worksheet: Worksheet): void {
  const { codePath } = result
  const bending = worstCheck(result.rafters, 'bending')
  if (codePath === undefined || bending === undefined || bending.check.ratio <= 1 || !codePath.passes) return
  worksheet.find({
    severity: 'note',
    id: 'structure.rafter-code-path',
    message: `plane '${id}': the rule for existing buildings lets this pass (bending changes by ${codePath.changePct.toFixed(1)} %, up to ${GRAVITY_INCREASE_LIMIT_PCT} % is allowed), although the rafters do not carry it by the wood standard (${(100 * bending.check.ratio).toFixed(0)} %)${bending.check.isBare ? '; they do not without the array either' : ''}`,
    where: `structure.framing.${id}`,
    source: { document: 'IEBC 2021', place: '805.2', standing: 'secondary' },
    fix: 'An engineer decides; the rule says nothing about strength.',
  })
}

/** Writes the change of the plane's whole gravity load on the worksheet. */
export function reportGravity(
  plane: PlaneModel,
  framing: FramingSpec,
  arrayDeadPsf: PoundsPerSquareFoot,
  snowPsf: PoundsPerSquareFoot,
  worksheet: Worksheet,
): void {
  const roofAreaFt2 = planeAreaFt2(plane.geometry)
  const arrayAreaFt2 = plane.modules.reduce((sum, m) => sum + m.widthFt * m.heightFt, 0)
  const input = {
    roofAreaFt2,
    arrayAreaFt2,
    existingDeadPsf: framing.existingDeadPsf,
    livePsf: ROOF_LIVE_LOAD_PSF,
    snowPsf,
    arrayDeadPsf,
  }
  worksheet.step({
    id: `structure.${plane.geometry.id}.gravity-change`,
    says: 'Change of the gravity load of the plane, live load left out under the modules',
    formula:
      'change = area of array (array + snow - larger of 20 psf and snow) / (area of plane (D + larger of 20 psf and snow))',
    inputs: [
      { symbol: 'area of plane', value: roofAreaFt2, unit: 'ft2', from: `roof_planes.${plane.geometry.id}.outline` },
      { symbol: 'area of array', value: arrayAreaFt2, unit: 'ft2', from: 'arrays' },
      { symbol: 'array', value: arrayDeadPsf, unit: 'psf', from: 'equipment' },
      {
        symbol: 'D',
        value: framing.existingDeadPsf,
        unit: 'psf',
        from: `structure.framing.${plane.geometry.id}.existing_dead_psf`,
      },
      { symbol: 'snow', value: snowPsf, unit: 'psf', from: `structure.${plane.geometry.id}.snow` },
    ],
    result: { symbol: 'change', value: gravityChangePct(input), unit: '%' },
    source: { document: 'IBC 2018', place: '1607.13.5.1', standing: 'secondary' },
    limits: 'for information; the check is that of the worst rafter',
  })
}
