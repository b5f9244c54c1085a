import type { Electrical, Project } from '../../src/project/index.js'
import { microProject } from './demo.js'
import type { Tree, TreeFeeder, TreePanel, TreeSource, TreeTap } from './tree-model.js'
import { nextRatingA } from './tree-evaluator.js'

type Distribution = NonNullable<Electrical['distribution']>

const position = (atOppositeEnd: boolean): 'opposite_end' | 'other' => (atOppositeEnd ? 'opposite_end' : 'other')

const byId = <From extends { readonly id: string }, To>(
  list: readonly From[],
  one: (from: From) => To,
): Record<string, To> => Object.fromEntries(list.map((from) => [from.id, one(from)]))

const panelOf = (panel: TreePanel): Distribution['panels'][string] => ({
  bus_a: panel.busA,
  main_position: panel.centreFed ? 'centre' : 'end',
  terminal_temperature_c: 75,
  spaces_total: 40,
  spaces_free: 10,
  ...(panel.mainA === undefined ? {} : { main_a: panel.mainA }),
  ...(panel.breakersA === undefined ? {} : { breakers_a: [...panel.breakersA] }),
  ...(panel.loadA === undefined ? {} : { load_a: panel.loadA }),
})

type Size = NonNullable<NonNullable<Distribution['feeders']>[string]['size_awg']>

const sizes: readonly Size[] = [
  '8',
  '6',
  '4',
  '3',
  '2',
  '1',
  '1/0',
  '2/0',
  '3/0',
  '4/0',
  '250 kcmil',
  '300 kcmil',
  '500 kcmil',
]

const sizeOf = (text: string): Size => {
  const size = sizes.find((candidate) => candidate === text)
  if (size === undefined) throw new Error(`no size ${text}`)
  return size
}

const conductorOf = (of: TreeFeeder | TreeTap) => ({
  material: of.metal,
  size_awg: sizeOf(of.size),
  insulation: 'THWN-2' as const,
  ambient_c: of.ambientC,
  current_carrying: 2,
  length_ft: of.lengthFt,
  ...(of.method === undefined ? {} : { method: of.method }),
})

const feederOf = (feeder: TreeFeeder): NonNullable<Distribution['feeders']>[string] => ({
  from: feeder.from,
  to: feeder.to,
  breaker_a: feeder.deviceA,
  breaker_position: position(feeder.atOppositeEnd),
  ...conductorOf(feeder),
})

const tapOf = (tap: TreeTap): NonNullable<Distribution['taps']>[string] => ({
  feeder: tap.feeder,
  position: tap.farEnd ? 'far_end' : 'along',
  ...conductorOf(tap),
  ...(tap.endDeviceA === undefined ? {} : { end_device_a: tap.endDeviceA }),
  end_devices: tap.endDevices,
  ...(tap.loadA === undefined ? {} : { load_a: tap.loadA }),
  leaves_enclosure: tap.leavesEnclosure,
  outdoors: tap.outdoors,
})

const sourceOf = (source: TreeSource): NonNullable<Distribution['sources']>[string] => ({
  kind: source.kind,
  ...(source.on === 'supply side' ? { supply_side: true } : { on: source.on }),
  current_a: source.currentA,
  breaker_a: source.deviceA,
  breaker_position: position(source.atOppositeEnd),
  runs_in_parallel: source.parallel,
})

/** Inverters of 1.25 A that a 16 A trunk takes. */
const ON_A_BRANCH = 12

/** The PV system: one branch of module-level inverters, or two on the breakers of a combiner. */
export const pvOf = (on: string, inverters: number, atOppositeEnd: boolean): TreeSource => {
  const currentA = 1.25 * inverters
  const branches = inverters > ON_A_BRANCH ? [Math.ceil(inverters / 2), Math.floor(inverters / 2)] : [inverters]
  return {
    id: 'pv',
    kind: 'pv',
    on,
    currentA,
    deviceA: nextRatingA(1.25 * currentA),
    firstDevicesA: branches.map((count) => nextRatingA(1.25 * 1.25 * count)),
    atOppositeEnd,
    parallel: true,
  }
}

/** The same installation as a project file states it. */
export function projectOf(tree: Tree): Project {
  const pv = tree.sources.find(({ id }) => id === 'pv')
  if (pv === undefined) throw new Error('no PV system')
  const onTap = tree.taps.some(({ id }) => id === pv.on)
  const { control } = tree
  const base = microProject(
    {
      connection: {
        kind: onTap ? 'feeder_tap' : 'load_side_breaker',
        at: pv.on,
        breaker_a: pv.deviceA,
        breaker_position: position(pv.atOppositeEnd),
      },
      runs: {
        home: {
          carries: ['branches'],
          segments: { inside: { location: 'indoors', length_ft: 20, raceway: 'EMT' } },
        },
        ...(pv.firstDevicesA.length > 1
          ? {
              out: {
                carries: ['output'],
                segments: { hall: { location: 'indoors', length_ft: 10, raceway: 'EMT' } },
              },
            }
          : {}),
      },
      distribution: {
        panels: byId(tree.panels, panelOf),
        feeders: byId(tree.feeders, feederOf),
        taps: byId(tree.taps, tapOf),
        sources: byId(
          tree.sources.filter(({ id }) => id !== 'pv'),
          sourceOf,
        ),
      },
      ...(control === undefined
        ? {}
        : {
            power_control: {
              setting_a: control.settingA,
              panels: [...control.panels],
              uncontrolled: [...control.uncontrolled],
              locked_setting: control.locked,
              ...(control.documented ? { document: 'control_sheet' } : {}),
            },
          }),
    },
    Math.round(pv.currentA / 1.25),
  )
  const { panel: _, combiner, ...electrical } = base.electrical ?? {}
  return {
    ...base,
    codes: { electrical: tree.edition },
    electrical: pv.firstDevicesA.length > 1 && combiner !== undefined ? { ...electrical, combiner } : electrical,
    documents: [
      { id: 'control_sheet', file: 'control.pdf', title: 'Listing of the power control system', date: '2026-02-01' },
    ],
  }
}
