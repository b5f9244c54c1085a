import type { DistributionFeeder, DistributionPanel, Electrical, Project } from '../../src/project/index.js'
import { microHouse, stringHouse } from './demo-packet.js'

function withElectrical(base: Project, change: Partial<Electrical>): Project {
  const { panel: _, ...electrical } = base.electrical ?? {}
  return { ...base, electrical: { ...electrical, ...change } }
}

const SERVICE: NonNullable<Electrical['service']> = {
  rating_a: 200,
  conductor_size: '4/0',
  conductor_material: 'aluminum',
  conductor_insulation: 'XHHW-2',
  available_fault_current_a: 9000,
  meter: { kind: 'socket', rating_a: 200 },
  bonding: { electrodes: ['rod', 'concrete_encased'], metal_service_raceway: true },
}

const MAIN: DistributionPanel = {
  name: 'Main panel',
  bus_a: 200,
  main_a: 200,
  main_position: 'end',
  breakers_a: [20, 20, 30, 40],
  load_a: 74,
  spaces_free: 6,
  terminal_temperature_c: 75,
  interrupting_rating_a: 22000,
  location: 'outdoors',
}

const GARAGE: DistributionPanel = {
  name: 'Garage panel',
  bus_a: 125,
  main_position: 'end',
  breakers_a: [20, 30],
  load_a: 28,
  spaces_free: 4,
  terminal_temperature_c: 75,
  interrupting_rating_a: 10000,
  location: 'indoors',
}

const FEEDER: DistributionFeeder = {
  from: 'main',
  to: 'garage',
  breaker_a: 60,
  breaker_position: 'opposite_end',
  breaker_marked_line_load: false,
  material: 'copper',
  size_awg: '4',
  insulation: 'THWN-2',
  method: 'EMT',
  length_ft: 45,
}

/** An INVENTED house whose PV breaker stands in a subpanel. */
export function subpanelHouse(): Project {
  return withElectrical(microHouse({ title: 'Subpanel house (invented)' }), {
    service: SERVICE,
    connection: {
      kind: 'load_side_breaker',
      at: 'garage',
      breaker_position: 'opposite_end',
      breaker_marked_line_load: false,
    },
    distribution: { panels: { main: MAIN, garage: GARAGE }, feeders: { to_garage: FEEDER } },
  })
}

/** Three levels, a tap with an older system on it, a generator at the main and an older PV system at the last panel. */
export function threeLevels(): Project {
  return withElectrical(microHouse({ title: 'House of three levels (invented)' }), {
    service: SERVICE,
    connection: {
      kind: 'load_side_breaker',
      at: 'shed',
      breaker_position: 'opposite_end',
      breaker_marked_line_load: false,
    },
    distribution: {
      panels: {
        main: MAIN,
        garage: { ...GARAGE, main_a: 100 },
        shed: { name: 'Workshop panel', bus_a: 100, main_position: 'end', breakers_a: [20], spaces_free: 4 },
        kiln: { name: 'Kiln panel', bus_a: 60, main_a: 50, breakers_a: [50] },
      },
      feeders: {
        to_garage: { ...FEEDER, breaker_a: 100, size_awg: '1' },
        to_shed: { ...FEEDER, from: 'garage', to: 'shed', breaker_a: 60, method: 'UF', length_ft: 80 },
        to_kiln: { from: 'main', to: 'kiln', breaker_a: 60, material: 'copper', length_ft: 30 },
      },
      taps: {
        hut: { feeder: 'to_garage', material: 'copper', size_awg: '6', insulation: 'THWN-2', length_ft: 9 },
      },
      sources: {
        old_pv: { name: 'PV of 2015', kind: 'pv', on: 'hut', current_a: 12, breaker_a: 15 },
        generator: {
          name: 'Generator',
          kind: 'generator',
          on: 'main',
          current_a: 30,
          breaker_a: 40,
          runs_in_parallel: false,
        },
        battery: { name: 'Battery of the cellar', kind: 'storage', supply_side: true, current_a: 16, breaker_a: 20 },
      },
    },
  })
}

/** The PV system lands on a tap of the feeder to the garage. */
export function tapHouse(): Project {
  return withElectrical(microHouse({ title: 'House with a feeder tap (invented)' }), {
    service: SERVICE,
    connection: { kind: 'feeder_tap', at: 'pv_tap' },
    distribution: {
      panels: { main: MAIN, garage: { ...GARAGE, main_a: 60 } },
      feeders: { to_garage: FEEDER },
      taps: {
        pv_tap: { feeder: 'to_garage', position: 'far_end', material: 'copper', insulation: 'THWN-2', length_ft: 8 },
      },
    },
  })
}

/** Strings ahead of the service disconnect of a house with two panels at the service. */
export function supplyTree(): Project {
  return withElectrical(stringHouse(), {
    service: { ...SERVICE, conductor_ampacity_a: 180 },
    distribution: {
      panels: { main: MAIN, garage: { ...GARAGE, main_a: 100 } },
    },
  })
}

/** The short form with everything that is known of the service. */
export function knownService(): Project {
  const base = microHouse({ title: 'House with a known service (invented)' })
  return { ...base, electrical: { ...base.electrical, service: SERVICE } }
}

/** Names as long as people write them. */
export function longTree(): Project {
  const base = threeLevels()
  const { distribution } = base.electrical ?? {}
  if (distribution === undefined) throw new Error('no distribution')
  const long = (text: string) => `${text} in the rear carriage house behind the Featherstonehaugh-Cholmondeley addition`
  const { panels, sources } = distribution
  return withElectrical(base, {
    distribution: {
      ...distribution,
      panels: Object.fromEntries(
        Object.entries(panels).map(([id, each]) => [id, { ...each, name: long(`Panel ${id}`) }]),
      ),
      sources: Object.fromEntries(
        Object.entries(sources ?? {}).map(([id, each]) => [id, { ...each, name: long(`Source ${id}`) }]),
      ),
    },
  })
}
