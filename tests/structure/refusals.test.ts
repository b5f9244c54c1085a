import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { spaceMounts, type RoofArrangement } from '../../src/structure/index.js'
import { StageError } from '../../src/worksheet/index.js'
import { block, demoArrangement, demoProject, hipPlane, rectangle } from './demo-house.js'

/** Sets or, with undefined, deletes a dotted path in a copy of the demo project. */
function changed(path: string, value: unknown): Project {
  const project = structuredClone(demoProject())
  const keys = path.split('.')
  let at = project as unknown as Record<string, unknown>
  for (const key of keys.slice(0, -1)) {
    at[key] ??= {}
    at = at[key] as Record<string, unknown>
  }
  const last = keys.at(-1) ?? ''
  if (value === undefined) delete at[last]
  else at[last] = value
  return project
}

function refusal(project: Project, arrangement: RoofArrangement = demoArrangement()): StageError {
  try {
    spaceMounts(project, arrangement)
  } catch (error) {
    if (error instanceof StageError) return error
    throw error
  }
  throw new Error('not refused')
}

describe('outside the method', () => {
  it.each([
    ['structure.wind.hill_or_escarpment', true, /hill/],
    ['structure.wind.special_wind_region', true, /special wind region/],
    ['structure.wind.mean_roof_height_ft', 61, /60 ft/],
    ['structure.snow.ground_psf', 71, /70 psf/],
    ['structure.building.enclosure', 'partially_enclosed', /enclosed/],
    ['structure.building.enclosure', 'open', /enclosed/],
    ['structure.framing.south.direction', 'along_eave', /purlin/],
  ] as const)('%s = %s is refused', (path, value, reason) => {
    const error = refusal(changed(path, value))
    expect(error.where).toBe(path)
    expect(error.message).toMatch(reason)
    expect(error.fix).toMatch(/engineer|manufacturer/i)
  })

  it.each([6.9, 7, 45.1, 60])('a slope of %s degrees is refused', (tilt) => {
    const error = refusal(demoProject(), { planes: [rectangle('south', 48, 16, tilt)], modules: block(1, 4, 12, 3) })
    expect(error.where).toBe('roof_planes.south.tilt_deg')
    expect(error.message).toMatch(/slope/)
  })

  it.each([
    ['past the edge', block(1, 4, 36, 3)],
    ['past the edge', block(2, 4, 12, 5)],
    ['over the roof overhang', block(1, 4, 12, 0.9)],
    ['over the roof overhang', block(1, 4, 0.2, 3)],
  ])('a module %s is refused', (reason, modules) => {
    const error = refusal(demoProject(), { planes: [rectangle('south', 48, 16, 22)], modules })
    expect(error.message).toContain(reason)
  })

  it('7-10 hip roofs over 27 degrees are refused', () => {
    const project = changed('codes.loads', 'ASCE 7-10')
    if (project.structure?.building !== undefined) project.structure.building.roof_kind = 'hip'
    const error = refusal(project, { planes: [hipPlane('south', 60, 18, 24, 33)], modules: block(1, 3, 24, 4) })
    expect(error.message).toMatch(/no pressure coefficients/)
  })

  it('a wished spacing below the rafter spacing is refused', () => {
    expect(refusal(changed('structure.mount_spacing_in', 12)).where).toBe('structure.mount_spacing_in')
  })

  it('strength-level snow is refused before 7-22', () => {
    expect(refusal(changed('structure.snow.ground_basis', 'strength')).where).toBe('structure.snow.ground_basis')
  })

  it('a screw that hardly reaches the rafter is refused', () => {
    const error = refusal(changed('equipment.mounts.foot.lag.length_in', 2))
    expect(error.message).toMatch(/4 diameters/)
  })

  it('two screws need their distance, and a bridged gap needs a tested value', () => {
    expect(refusal(changed('equipment.mounts.foot.lag.count', 2)).where).toContain('in_line_spacing_in')
    const gap = changed('equipment.mounts.foot.stands_off', true)
    delete gap.equipment.mounts?.['foot']?.capacity_lateral_lb
    expect(refusal(gap).where).toContain('capacity_lateral_lb')
  })

  it('a rail over fewer than two rafters is refused', () => {
    const error = refusal(changed('structure.framing.south.spacing_in', 72), {
      planes: [rectangle('south', 48, 16, 22)],
      modules: block(1, 1, 12, 3),
    })
    expect(error.message).toMatch(/needs two/)
  })

  it('no modules, or modules on a plane without outline', () => {
    expect(refusal(demoProject(), { planes: [], modules: [] }).where).toBe('arrays')
    expect(
      refusal(demoProject(), { planes: [rectangle('north', 40, 16, 22)], modules: block(1, 4, 12, 3) }).where,
    ).toContain('outline')
  })
})

describe('safety inputs are asked for', () => {
  it.each([
    'codes.loads',
    'structure.wind.basic_speed_mph',
    'structure.wind.exposure',
    'structure.wind.mean_roof_height_ft',
    'structure.wind.hill_or_escarpment',
    'structure.wind.special_wind_region',
    'structure.snow.ground_psf',
    'structure.snow.roof_exposure',
    'structure.snow.thermal',
    'structure.building.width_ft',
    'structure.building.length_ft',
    'structure.building.enclosure',
    'structure.building.roof_kind',
    'structure.framing.south',
    'structure.framing.south.kind',
    'structure.framing.south.nominal_size',
    'structure.framing.south.species',
    'structure.framing.south.spacing_in',
    'structure.framing.south.first_offset_in',
    'structure.framing.south.span_ft',
    'structure.framing.south.eave_overhang_in',
    'structure.framing.south.rake_overhang_in',
    'structure.framing.south.sheathing_in',
    'structure.framing.south.covering_in',
    'structure.framing.south.existing_dead_psf',
    'structure.framing.south.wet_service',
    'structure.framing.south.sustained_temperature',
    'structure.rail',
    'structure.mount',
    'equipment.rails.rail40.moment_of_inertia_x_in4',
    'equipment.rails.rail40.section_modulus_x_in3',
    'equipment.rails.rail40.alloy',
    'equipment.rails.rail40.max_cantilever_in',
    'equipment.rails.rail40.stock_lengths_in',
    'equipment.rails.rail40.splice.min_from_mount_in',
    'equipment.rails.rail40.weight_lb_per_ft',
    'equipment.mounts.foot.capacity_uplift_lb',
    'equipment.mounts.foot.capacity_down_lb',
    'equipment.mounts.foot.base_in',
    'equipment.mounts.foot.base_plate',
    'equipment.mounts.foot.stands_off',
    'equipment.mounts.foot.lag',
    'equipment.mounts.foot.weight_lb',
    'equipment.modules.m410.weight_lb',
    'equipment.modules.m410.thickness_in',
    'equipment.modules.m410.clamp_zone_from_corner_in',
  ])('%s', (path) => {
    const error = refusal(changed(path, undefined))
    expect(error.where).toBe(path)
    expect(error.fix.length).toBeGreaterThan(10)
  })

  it('7-22 asks for the level of the snow, and for what gives the thermal factor', () => {
    const project = changed('codes.loads', 'ASCE 7-22')
    expect(refusal(project).where).toBe('structure.snow.ground_basis')
    const snow = project.structure?.snow ?? {}
    snow.ground_basis = 'strength'
    snow.thermal = 'heated'
    expect(refusal(project).where).toBe('structure.snow.roof_insulation_r')
    snow.thermal = 'greenhouse'
    expect(refusal(project).where).toBe('structure.snow.thermal_factor')
    delete snow.thermal
    expect(refusal(project).where).toBe('structure.snow.thermal')
  })
})

describe('conditions of the method for parallel modules are findings', () => {
  const ids = (project: Project, arrangement: RoofArrangement = demoArrangement()): string[] =>
    spaceMounts(project, arrangement)
      .findings.filter((f) => f.severity !== 'note')
      .map((f) => `${f.severity} ${f.id}`)

  it('none on the demo house', () => expect(ids(demoProject())).toEqual([]))

  it('tilt to the roof', () => {
    expect(ids(changed('arrays.south.module_tilt_deg', 25))).toContain('error structure.solar-tilt')
    expect(ids(changed('arrays.south.module_tilt_deg', 23.5))).toEqual([])
  })

  it('height above the roof', () => {
    expect(ids(changed('arrays.south.standoff_in', 8.6))).toEqual([])
    expect(ids(changed('arrays.south.standoff_in', 9))).toContain('error structure.solar-height')
  })

  it('gap between modules', () => {
    const tight = demoArrangement().modules.map((m) => ({ ...m, xFt: m.xFt - ((m.column - 1) * 0.3) / 12 }))
    expect(ids(demoProject(), { planes: demoArrangement().planes, modules: tight })).toContain(
      'error structure.solar-gap',
    )
  })

  it('distance to the roof edges', () => {
    expect(ids(demoProject(), { planes: [rectangle('south', 48, 16, 22)], modules: block(2, 6, 12, 4.1) })).toContain(
      'error structure.solar-edge-distance',
    )
  })

  it('length of the module', () => {
    const long = block(1, 4, 12, 3).map((m) => ({ ...m, heightFt: 6.8 }))
    expect(ids(demoProject(), { planes: [rectangle('south', 48, 16, 22)], modules: long })).toContain(
      'warning structure.solar-module-length',
    )
  })

  it('7-10 has no such clause, but the modules must follow the roof there too', () => {
    const ten = changed('codes.loads', 'ASCE 7-10')
    expect(ids(ten, { planes: [rectangle('south', 48, 16, 22)], modules: block(2, 6, 12, 4.1) })).toEqual([])
    const array = ten.arrays['south']
    if (array !== undefined) array.module_tilt_deg = 30
    expect(ids(ten)).toContain('error structure.solar-tilt')
  })
})

describe('other findings', () => {
  const find = (project: Project, id: string) =>
    spaceMounts(project, demoArrangement()).findings.find((f) => f.id === id)

  it('lead hole out of range', () => {
    expect(find(changed('equipment.mounts.foot.lag.lead_hole_in', 0.25), 'structure.lead-hole')?.severity).toBe(
      'warning',
    )
  })

  it('screws too close', () => {
    const project = changed('equipment.mounts.foot.lag', {
      size: '5/16',
      length_in: 5,
      count: 2,
      in_line_spacing_in: 1,
    })
    expect(find(project, 'structure.lag-spacing')?.severity).toBe('error')
  })

  it('a fire class that nobody stated, where the residential code asks for it', () => {
    const told = (residential: string) =>
      find(changed('codes.residential', residential), 'roof.fire-class-not-stated')?.severity
    expect(told('IRC 2021')).toBe('error')
    expect(told('IFC 2015')).toBe('warning')
    expect(find(demoProject(), 'roof.fire-class-not-stated')).toBeUndefined()
  })

  it('rail pieces that no stock length allows', () => {
    expect(find(changed('equipment.rails.rail40.stock_lengths_in', [20]), 'structure.rail-splice')?.severity).toBe(
      'error',
    )
  })

  it('long rails without an expansion gap', () => {
    expect(
      find(changed('equipment.rails.rail40.splice.max_continuous_ft', 20), 'structure.rail-expansion')?.severity,
    ).toBe('error')
  })

  it.each([
    ['equipment.rails.rail40.section_modulus_y_in3', 'structure.rail-along-slope-not-checked'],
    ['equipment.rails.rail40.shear_area_in2', 'structure.rail-shear-not-checked'],
    ['equipment.rails.rail40.clamp', 'structure.clamp-not-checked'],
    ['equipment.mounts.foot.capacity_lateral_lb', 'structure.mount-lateral-not-checked'],
  ])('a sheet without %s is told', (path, id) => {
    expect(find(changed(path, undefined), id)?.severity).toBe('warning')
  })

  it('coverings that must not carry a mount', () => {
    expect(find(changed('structure.framing.south.covering', 'tile'), 'structure.covering')?.severity).toBe('error')
    expect(find(changed('structure.framing.south.covering', 'metal'), 'structure.covering')?.severity).toBe('error')
    expect(find(changed('structure.framing.south.covering', 'asphalt_shingle'), 'structure.covering')).toBeUndefined()
  })

  it('snow that is held', () => {
    expect(find(changed('structure.snow.ground_psf', 20), 'structure.snow-held')?.severity).toBe('note')
  })

  it('defaults are assumptions', () => {
    const project = changed('equipment.rails.rail40.deflection_limit', undefined)
    for (const key of ['mount_layout', 'mount_edge_in', 'mount_clearance_in'] as const) delete project.structure?.[key]
    delete project.equipment.rails?.['rail40']?.end_allowance_in
    delete project.codes?.wood
    const { assumptions } = spaceMounts(project, demoArrangement())
    expect(assumptions.map((a) => a.path).sort()).toEqual([
      'codes.wood',
      'equipment.rails.rail40.deflection_limit',
      'equipment.rails.rail40.end_allowance_in',
      'structure.framing.south.notch_in',
      'structure.framing.south.seat_in',
      'structure.mount_clearance_in',
      'structure.mount_edge_in',
      'structure.mount_layout',
    ])
    for (const a of assumptions) expect(a.why.length).toBeGreaterThan(10)
  })
})
