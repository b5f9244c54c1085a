import { sizeWire, type WiringValues } from '../../src/electrical/index.js'
import { context } from './demo.js'
import { projectOf, pvOf } from './tree-project.js'
import type { Tree, TreeFeeder, TreePanel, TreeSource, TreeTap } from './tree-model.js'

/** Parts of small installations for tests, harmless until a test changes one. */
export const panel = (id: string, change: Partial<TreePanel> = {}): TreePanel => ({
  id,
  busA: 200,
  mainA: undefined,
  centreFed: false,
  breakersA: undefined,
  loadA: undefined,
  ...change,
})

export const feeder = (id: string, from: string, to: string, change: Partial<TreeFeeder> = {}): TreeFeeder => ({
  id,
  from,
  to,
  deviceA: 60,
  atOppositeEnd: true,
  size: '4',
  metal: 'copper',
  method: 'EMT',
  lengthFt: 30,
  ambientC: 30,
  ...change,
})

export const tap = (id: string, on: string, change: Partial<TreeTap> = {}): TreeTap => ({
  id,
  feeder: on,
  farEnd: false,
  size: '8',
  metal: 'copper',
  method: 'EMT',
  lengthFt: 8,
  ambientC: 30,
  endDeviceA: undefined,
  endDevices: 1,
  loadA: undefined,
  leavesEnclosure: true,
  outdoors: false,
  ...change,
})

export const source = (id: string, on: string, change: Partial<TreeSource> = {}): TreeSource => ({
  id,
  kind: 'pv',
  on,
  currentA: 12,
  deviceA: 15,
  firstDevicesA: [15],
  atOppositeEnd: true,
  parallel: true,
  ...change,
})

export const tree = (change: Partial<Tree> = {}): Tree => ({
  edition: 'NEC 2023',
  panels: [panel('main', { mainA: 200 })],
  feeders: [],
  taps: [],
  sources: [pvOf('main', 4, true)],
  control: undefined,
  ...change,
})

export type NodeValues = WiringValues['distribution'][number]

/** A node of the result. */
export function nodeOf(of: Tree, id: string): NodeValues {
  const found = sizeWire(projectOf(of), context(30, 0)).values.distribution.find((node) => node.id === id)
  if (found === undefined) throw new Error(`no node ${id}`)
  return found
}

/** A rule of a node of the result. */
export function ruleOf(of: Tree, id: string, rule: string): NodeValues['rules'][number] {
  const found = nodeOf(of, id).rules.find((each) => each.rule === rule)
  if (found === undefined) throw new Error(`no rule ${rule} on ${id}`)
  return found
}
