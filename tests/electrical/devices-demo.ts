import { sizeWire, type WiringValues } from '../../src/electrical/index.js'
import type { ArrayOfModules, Electrical, Inverter, Optimiser, Project, PvModule } from '../../src/project/index.js'
import type { Result } from '../../src/worksheet/index.js'
import { context, microProject, stringProject } from './demo.js'

/** An invented converter for one module. */
export const o450: Optimiser = {
  input_max_v: 60,
  input_min_v: 8,
  max_isc_a: 20,
  max_input_power_w: 450,
  output_max_a: 15,
  output_max_v: 60,
  regulated_string_v: 380,
  shutdown_v: 1,
  min_per_string: 8,
  max_per_string: 25,
  max_string_power_w: 6000,
  max_string_fuse_a: 25,
  works_with: ['s5000'],
  rapid_shutdown: true,
}

export type StringChange = {
  readonly optimiser?: Partial<Optimiser>
  readonly module?: Partial<PvModule>
  readonly inverter?: Partial<Inverter>
  readonly array?: Partial<ArrayOfModules>
  readonly electrical?: Partial<Electrical>
  readonly strings?: readonly { readonly modules: number; readonly input: number }[]
}

/** The invented house with strings, with changes of its equipment. */
export function stringHouse({ module, inverter, array, electrical, strings }: StringChange = {}): Project {
  const project = stringProject(electrical, strings)
  const { modules, inverters } = project.equipment
  return {
    ...project,
    arrays: { south: { ...need(project.arrays['south']), ...array } },
    equipment: {
      ...project.equipment,
      modules: { m410: { ...need(modules?.['m410']), max_system_voltage_v: 1000, ...module } },
      inverters: { s5000: { ...need(inverters?.['s5000']), max_input_isc_a: 30, ...inverter } },
    },
  }
}

/** The same with a converter behind each module. */
export function optimiserHouse(change: StringChange = {}): Project {
  const project = stringHouse({ ...change, array: { optimiser: 'o450', ...change.array } })
  return { ...project, equipment: { ...project.equipment, optimisers: { o450: { ...o450, ...change.optimiser } } } }
}

/** Strings of 12 in parallel on one input, in a DC combiner. */
export function combinerHouse(
  count: number,
  box: Partial<NonNullable<Electrical['dc_combiners']>[string]> = {},
  change: StringChange = {},
): Project {
  const plain = stringProject().electrical?.runs
  return stringHouse({
    ...change,
    strings: Array.from({ length: count }, () => ({ modules: 12, input: 1 })),
    electrical: {
      dc_combiners: {
        box: {
          inputs: Array.from({ length: count }, (_, i) => `south_s${i + 1}`),
          poles_fused: 'both',
          fuses_listed_for_pv: true,
          max_voltage_v: 600,
          max_current_a: 200,
          listed_for_dc: true,
          disconnect: true,
          ...box,
        },
      },
      runs: {
        ...plain,
        dc_out: {
          carries: ['box'],
          segments: { wall: { location: 'outdoor_wall', length_ft: 30, raceway: 'EMT' } },
        },
      },
      ...change.electrical,
    },
  })
}

/** The invented house with module-level inverters on a 208Y/120 V service. */
export function wyeProject(change: Partial<Electrical> = {}, modules = 15, inverter: Partial<Inverter> = {}): Project {
  const project = microProject(
    {
      service: { rating_a: 200, conductor_ampacity_a: 200, voltage_v: 208, phases: 3, system: 'wye' },
      branches: { b1: { modules: { south: modules }, phases: 'ABC' } },
      ...change,
    },
    modules,
  )
  const micro = need(project.equipment.inverters?.['micro'])
  const trunk = need(project.equipment.trunk_cables?.['trunk12'])
  return {
    ...project,
    equipment: {
      ...project.equipment,
      inverters: { micro: { ...micro, ac_voltage_v: 208, ac_current_a: 1.83, ...inverter } },
      trunk_cables: { trunk12: { ...trunk, lines: 3 } },
    },
  }
}

/** The invented house with one or more string inverters on a 208Y/120 V service, one string each. */
export function wyeUnits(units: Project['inverter_units'], inverter: Partial<Inverter>, modules = 12): Project {
  const project = stringHouse({
    inverter: { ac_voltage_v: 208, ...inverter },
    electrical: {
      service: { rating_a: 400, voltage_v: 208, phases: 3, system: 'wye' },
      panel: { bus_a: 400, main_a: 200, spaces_free: 20, terminal_temperature_c: 75 },
    },
    array: { strings: Object.keys(units ?? {}).map((unit) => ({ modules, inverter_unit: unit, input: 1 })) },
  })
  return { ...project, ...(units === undefined ? {} : { inverter_units: units }) }
}

export const size = (project: Project, edition = 'NEC 2020'): Result<WiringValues> =>
  sizeWire(project, { ...context(), edition })

export const idsOf = (project: Project, edition?: string): string[] =>
  size(project, edition).findings.map(({ id }) => id)

export function need<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('missing in the test')
  return value
}
