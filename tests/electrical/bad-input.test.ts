import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import type { Electrical, Project, WiringSegment } from '../../src/project/index.js'
import { StageError } from '../../src/worksheet/index.js'
import { context, demoSegments, microProject, stringProject } from './demo.js'

function refusal(project: Project, given = context()): StageError {
  try {
    sizeWire(project, given)
  } catch (error) {
    if (error instanceof StageError) return error
    throw error
  }
  throw new Error('it was not refused')
}

/** The demo with one segment changed. */
function withRoof(change: Partial<WiringSegment>, remove: readonly (keyof WiringSegment)[] = []): Project {
  const roof: Partial<WiringSegment> = { ...demoSegments['roof'], ...change }
  for (const key of remove) delete roof[key]
  return microProject({
    runs: {
      ...microProject().electrical?.runs,
      home: { carries: ['branches'], segments: { ...demoSegments, roof: roof as WiringSegment } },
    },
  })
}

const without = (key: keyof Electrical): Project => {
  const electrical = { ...microProject().electrical }
  delete electrical[key]
  return { ...microProject(), electrical }
}

describe('each of these is refused with one clear message', () => {
  it.each<[string, Project, string, RegExp]>([
    [
      'no path for the branches',
      microProject({ runs: {} }),
      'electrical.runs',
      /no path from the array to the panel.*south_1/,
    ],
    [
      'no path for the combined output',
      microProject({ runs: { home: { carries: ['branches'], segments: demoSegments } } }),
      'electrical.runs',
      /no path.*'output'/,
    ],
    ['no electrical part', { ...microProject(), electrical: undefined } as unknown as Project, 'electrical', /no path/],
    [
      'a raceway too small for the named conductors',
      withRoof({ size_awg: '6', trade_size: '1/2' }),
      'electrical.runs.home.segments.roof.trade_size',
      /EMT 1\/2 is too small: 5 conductors/,
    ],
    [
      'a 90 C terminal',
      microProject({ panel: { bus_a: 200, main_a: 200, terminal_temperature_c: 90 as 75 } }),
      'electrical.panel.terminal_temperature_c',
      /90 deg C are not allowed; 60 and 75 are/,
    ],
    [
      'aluminum below 12 AWG',
      withRoof({ material: 'aluminum', size_awg: '14' }),
      'electrical.runs.home.segments.roof.size_awg',
      /aluminum conductors begin at 12 AWG/,
    ],
    [
      '0 ft',
      withRoof({ length_ft: 0 }),
      'electrical.runs.home.segments.roof.length_ft',
      /the length is 0; it must be above 0/,
    ],
    [
      'a length that is not a number',
      withRoof({ length_ft: NaN }),
      'electrical.runs.home.segments.roof.length_ft',
      /above 0/,
    ],
    [
      'a panel without main rating',
      microProject({ panel: { bus_a: 200 } }),
      'electrical.panel.main_a',
      /main rating is not stated/,
    ],
    [
      'a panel without busbar rating',
      microProject({ panel: { main_a: 200 } }),
      'electrical.panel.bus_a',
      /busbar rating is not stated/,
    ],
    ['no connection', without('connection'), 'electrical.connection', /joins the house wiring/],
    [
      'a roof raceway without height',
      withRoof({}, ['height_above_roof_in']),
      'electrical.runs.home.segments.roof.height_above_roof_in',
      /height.*not stated/,
    ],
    [
      'an attic without temperature',
      withRoof({ location: 'attic' }),
      'electrical.runs.home.segments.roof.ambient_c',
      /attic is not stated/,
    ],
    [
      'THHN on a roof',
      withRoof({ insulation: 'THHN' }),
      'electrical.runs.home.segments.roof.insulation',
      /not rated for the wet/,
    ],
    [
      'wire without raceway outside the array',
      withRoof({ raceway: 'none' }),
      'electrical.runs.home.segments.roof.raceway',
      /only within the array/,
    ],
    [
      'loose AC wire in the array',
      withRoof({ raceway: 'none', location: 'array' }),
      'electrical.runs.home.segments.roof.raceway',
      /only as listed trunk cable/,
    ],
    [
      'PV wire in a raceway without its diameter',
      withRoof({ insulation: 'PV wire' }),
      'electrical.runs.home.segments.roof.conductor_diameter_in',
      /no outside diameter of PV wire/,
    ],
    [
      'too hot for any wire',
      withRoof({ ambient_c: 85, height_above_roof_in: 0 }),
      'electrical.runs.home.segments.roof',
      /too hot/,
    ],
    [
      'an unknown circuit in a run',
      microProject({ runs: { home: { carries: ['strings'], segments: demoSegments } } }),
      'electrical.runs.home.carries',
      /no circuit 'strings'; known are south_1, south_2, output/,
    ],
    [
      'branches that do not hold every module',
      microProject({ branches: { b1: { modules: { south: 10 } } } }),
      'electrical.branches',
      /hold 10 modules of array 'south', which has 24/,
    ],
    [
      'an unknown array on a branch',
      microProject({ branches: { b1: { modules: { nord: 10 } } } }),
      'electrical.branches.b1.modules.nord',
      /there is no array 'nord'/,
    ],
    [
      'two circuits with one name',
      microProject({ branches: { output: { modules: { south: 24 } } } }),
      'electrical.combiner',
      /two circuits are called 'output'/,
    ],
    ['an unknown trunk', microProject({ trunk: 'thick' }), 'electrical.trunk', /no trunk cable 'thick'/],
    [
      'an edition that is not in the tables',
      microProject({}),
      'codes.electrical',
      /NEC 2029.*NEC 2011, NEC 2014, NEC 2017, NEC 2020, NEC 2023, NEC 2026$/,
    ],
  ])('%s', (name, project, where, message) => {
    const given = name.startsWith('an edition') ? { ...context(), edition: 'NEC 2029' } : context()
    const error = refusal(project, given)
    expect(error.where).toBe(where)
    expect(error.message).toMatch(message)
    expect(error.fix).not.toBe('')
  })

  it('NEC 2008 is not offered', () => {
    expect(refusal(microProject(), { ...context(), edition: 'NEC 2008' }).message).toContain(
      "'NEC 2008' is not in the tables",
    )
  })

  it('no edition at all', () => {
    const { codes: _, ...project } = microProject()
    expect(refusal(project).where).toBe('codes.electrical')
  })

  it('no hot design temperature', () => {
    const given = { designTemperatures: { ...context().designTemperatures, high2pct: undefined } }
    const error = refusal(microProject(), given)
    expect(error.where).toBe('site.design_temperatures.high_2pct_c')
    expect(error.fix).toContain('ASHRAE')
  })

  it('no lowest design temperature', () => {
    const given = { designTemperatures: { ...context().designTemperatures, extremeLow: undefined } }
    expect(refusal(stringProject(), given).where).toBe('site.design_temperatures.extreme_low_c')
  })

  const edit = (
    project: Project,
    part: 'modules' | 'inverters',
    id: string,
    change: Record<string, unknown>,
  ): Project => {
    const old = project.equipment[part]?.[id]
    const next: Record<string, unknown> = { ...old, ...change }
    for (const [key, value] of Object.entries(change)) if (value === undefined) delete next[key]
    return { ...project, equipment: { ...project.equipment, [part]: { [id]: next } } }
  }

  it.each<[string, Project, string]>([
    ['no largest device', edit(microProject(), 'inverters', 'micro', { max_branch_ocpd_a: undefined }), ''],
    ['no Isc', edit(stringProject(), 'modules', 'm410', { isc_a: undefined }), 'equipment.modules.m410.isc_a'],
    ['no Voc', edit(stringProject(), 'modules', 'm410', { voc_v: undefined }), 'equipment.modules.m410.voc_v'],
    ['no Vmp', edit(microProject(), 'modules', 'm410', { vmp_v: undefined }), 'equipment.modules.m410.vmp_v'],
    [
      'a 208 V inverter',
      edit(microProject(), 'inverters', 'micro', { ac_voltage_v: 208 }),
      'equipment.inverters.micro.ac_voltage_v',
    ],
    [
      'thin film without coefficient',
      edit(stringProject(), 'modules', 'm410', { technology: 'thin_film', voc_temp_coeff_pct_per_c: undefined }),
      'equipment.modules.m410.voc_temp_coeff_pct_per_c',
    ],
    [
      'an inverter whose current does not fit any branch',
      edit(microProject(), 'inverters', 'micro', { ac_current_a: 17 }),
      'equipment.inverters.micro.max_branch_ocpd_a',
    ],
  ])('%s', (name, project, where) => {
    // The trunk of the demo states its own largest device; without it nothing limits the branch.
    const cables = project.equipment.trunk_cables
    const bare =
      name === 'no largest device' && cables?.['trunk12'] !== undefined
        ? {
            ...project,
            equipment: {
              ...project.equipment,
              trunk_cables: { trunk12: { size_awg: '12' as const, ampacity_a: 16, connector_spacing_ft: 4 } },
            },
          }
        : project
    const error = refusal(bare)
    expect(error.where).toBe(where === '' ? 'equipment.inverters.micro.max_branch_ocpd_a' : where)
    expect(error.fix).not.toBe('')
  })
})
