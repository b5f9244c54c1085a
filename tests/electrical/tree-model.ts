import type { Edition } from '../../src/tables/nec/index.js'

/** An installation for tests, from the service inwards: short names, one list a kind, nothing worked out. */
export interface Tree {
  readonly edition: Edition
  readonly panels: readonly TreePanel[]
  readonly feeders: readonly TreeFeeder[]
  readonly taps: readonly TreeTap[]
  /** The PV system of the project is the one with the id `pv`. */
  readonly sources: readonly TreeSource[]
  readonly control: TreeControl | undefined
}

export interface TreePanel {
  readonly id: string
  readonly busA: number
  /** Undefined: main lugs only. */
  readonly mainA: number | undefined
  readonly centreFed: boolean
  /** Undefined: not stated. */
  readonly breakersA: readonly number[] | undefined
  readonly loadA: number | undefined
}

export type Metal = 'copper' | 'aluminum'

export type Method = 'EMT' | 'RMC' | 'IMC' | 'PVC 40' | 'PVC 80' | 'LFMC' | 'LFNC' | 'MC' | 'SE' | 'NM' | 'UF'

export interface TreeFeeder {
  readonly id: string
  readonly from: string
  readonly to: string
  readonly deviceA: number
  readonly atOppositeEnd: boolean
  readonly size: string
  readonly metal: Metal
  readonly method: Method
  readonly lengthFt: number
  readonly ambientC: number
}

export interface TreeTap {
  readonly id: string
  readonly feeder: string
  readonly farEnd: boolean
  readonly size: string
  readonly metal: Metal
  /** Undefined: not stated. */
  readonly method: Method | undefined
  readonly lengthFt: number
  readonly ambientC: number
  /** Of a tap that ends in a load; a source brings its own. */
  readonly endDeviceA: number | undefined
  readonly endDevices: number
  readonly loadA: number | undefined
  readonly leavesEnclosure: boolean
  readonly outdoors: boolean
}

export interface TreeSource {
  readonly id: string
  readonly kind: 'pv' | 'storage' | 'generator'
  /** A panel, a tap, or 'supply side'. */
  readonly on: string
  readonly currentA: number
  /** Device where it lands. */
  readonly deviceA: number
  /** Devices that come first after its inverters; the one where it lands when there is only that one. */
  readonly firstDevicesA: readonly number[]
  readonly atOppositeEnd: boolean
  readonly parallel: boolean
}

export interface TreeControl {
  readonly settingA: number
  readonly panels: readonly string[]
  readonly uncontrolled: readonly string[]
  readonly documented: boolean
  readonly locked: boolean
}

export const sum = (numbers: readonly number[]): number => numbers.reduce((all, next) => all + next, 0)

/** Panels and feeders that the current of a source passes on its way to the utility, and the tap that it stands on. */
export function wayOf(tree: Tree, source: TreeSource): ReadonlySet<string> {
  const way = new Set<string>([source.on])
  const tap = tree.taps.find(({ id }) => id === source.on)
  let panel: string | undefined = source.on
  if (tap !== undefined) {
    way.add(tap.feeder)
    panel = tree.feeders.find(({ id }) => id === tap.feeder)?.from
  }
  while (panel !== undefined) {
    const here: string = panel
    way.add(here)
    const feeder = tree.feeders.find(({ to }) => to === here)
    if (feeder !== undefined) way.add(feeder.id)
    panel = feeder?.from
  }
  return way
}

/** Sources that run beside the utility and pass this node. */
export const sourcesThrough = (tree: Tree, id: string): readonly TreeSource[] =>
  tree.sources.filter((source) => source.parallel && wayOf(tree, source).has(id))
