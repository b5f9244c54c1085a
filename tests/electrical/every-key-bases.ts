import type { Electrical, Project, ShutdownEquipment } from '../../src/project/index.js'
import { microHouse, stringHouse as drawnStrings } from '../drawings/demo-packet.js'
import { microProject, stringProject } from './demo.js'
import { combinerHouse, stringHouse, wyeProject } from './devices-demo.js'
import type { Base } from './every-key-case.js'
import { feeder, panel, source, tap, tree } from './small-tree.js'
import { garageTree, treeProject } from './tree-house.js'
import { projectOf, pvOf } from './tree-project.js'

const treeHouse = (): Project =>
  projectOf(
    tree({
      panels: [
        panel('main', { mainA: 200, breakersA: [20, 20], loadA: 60 }),
        panel('sub', { busA: 100, breakersA: [20], loadA: 20 }),
      ],
      feeders: [feeder('f', 'main', 'sub')],
      taps: [tap('t', 'f', { endDeviceA: 40 })],
      sources: [pvOf('sub', 12, true), source('old', 'main')],
      control: { settingA: 60, panels: ['main'], uncontrolled: ['old'], documented: true, locked: true },
    }),
  )

const supplyHouse = (): Project =>
  microProject({ connection: { kind: 'supply_side', overcurrent_device_distance_ft: 8, conductor_size: '6' } })

const equipment: ShutdownEquipment = {
  modules_per_unit: 1,
  input_max_v: 80,
  input_max_a: 20,
  max_system_voltage_v: 1000,
  output_shutdown_v: 0.6,
  listed: true,
  transmitters: 1,
  strings_per_transmitter: 4,
  units_per_transmitter: 100,
  transmitter_on_initiator_supply: true,
}
const rapid_shutdown: NonNullable<Electrical['rapid_shutdown']> = {
  inside_boundary: 'module_level',
  initiator: 'switch',
  initiator_outdoors: true,
  equipment,
}

/** A house whose busbar fails while its older system stands at the wrong end, so that every way out is listed. */
const shortHouse = (): Project =>
  treeProject({
    ...garageTree,
    sources: {
      old: { kind: 'pv', on: 'main', current_a: 12, breaker_a: 15, breaker_position: 'other' },
    },
  })

/** The drawn house with a main panel and a subpanel in place of the short form; the system lands on the subpanel. */
export function houseOfPanels(): Project {
  const house = microHouse()
  const { panel: _, ...electrical } = house.electrical ?? {}
  const main = { bus_a: 200, main_a: 200, spaces_free: 4, terminal_temperature_c: 75, location: 'outdoors' } as const
  return {
    ...house,
    electrical: {
      ...electrical,
      connection: { kind: 'load_side_breaker', at: 'sub', breaker_position: 'opposite_end' },
      distribution: {
        panels: { main, sub: { bus_a: 125, spaces_free: 8, terminal_temperature_c: 75, location: 'indoors' } },
        feeders: {
          f: {
            from: 'main',
            to: 'sub',
            breaker_a: 100,
            breaker_position: 'opposite_end',
            material: 'copper',
            size_awg: '1',
            insulation: 'THWN-2',
            ambient_c: 30,
            length_ft: 20,
          },
        },
      },
    },
  }
}

/** The house of module-level inverters with lines of raceway on its plan. */
function drawnHouse(): Project {
  const point = (x: number, y: number) => ({ x_ft: x, y_ft: y })
  const raceway = (lengthFt: number) => ({ eave_left: point(10, 10), raceway: [point(32, 8), point(32 + lengthFt, 8)] })
  const house = microProject()
  return {
    ...house,
    roof_planes: { ...house.roof_planes, west: { azimuth_deg: 270, tilt_deg: 25 } },
    site_plan: {
      roof_planes: { south: raceway(7), west: raceway(9) },
      lot: [point(0, 0), point(90, 0), point(90, 90)],
      raceway_route: [point(0, 0), point(3, 0), point(3, 4), point(15, 4)],
    },
  }
}

function houseOfStrings(): Project {
  const house = drawnStrings()
  return { ...house, electrical: { ...house.electrical, rapid_shutdown } }
}

export const BASES: Readonly<Record<Base, () => Project>> = {
  micro: () => microProject(),
  tree: treeHouse,
  string: () => stringProject(),
  supply: supplyHouse,
  wye: () => wyeProject({}, 8),
  short: shortHouse,
  drawn: drawnHouse,
  boxes: () => combinerHouse(3),
  shutdown: () => stringHouse({ electrical: { rapid_shutdown } }),
  house: () => microHouse(),
  house_tree: houseOfPanels,
  bill: () => microHouse(),
  bill_string: houseOfStrings,
}
