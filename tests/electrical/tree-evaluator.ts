import { cell, readFixture } from './read-fixture.js'
import {
  sourcesThrough,
  sum,
  type Metal,
  type Method,
  type Tree,
  type TreeFeeder,
  type TreePanel,
  type TreeSource,
  type TreeTap,
} from './tree-model.js'

/**
 * A second opinion on an installation, written from the sections of the code and sharing nothing with the program but
 * the copies of the tables. Where readings differ it takes the safe one. 30 deg C, two conductors, 75 deg C terminals.
 *
 * @source NEC 705.12 and 705.13 by edition, 240.4(B), 240.21(B), 408.36, 215.3, 230.79
 */
export interface Opinion {
  readonly id: string
  readonly complies: boolean
  /** What speaks against it. */
  readonly against: readonly string[]
  /** Ways in which a busbar with sources may be connected; empty without sources. */
  readonly ways: readonly Way[]
}

export interface Way {
  readonly way: 'all' | '120' | 'breaker sum' | 'centre-fed' | 'power control'
  readonly holds: boolean
  /** Undefined where something is not stated. */
  readonly sumA: number | undefined
  readonly limitA: number
}

/** Sums of floating numbers that are equal on paper count as equal. */
const atMost = (left: number, right: number): boolean => left <= right + 1e-9

const ampacities = readFixture('ampacity_310_16')
const ratings = readFixture('ocpd_standard_240_6A').map((row) => Number(row['rating_A']))

/** Ampacity at 30 deg C and 75 deg C terminals; cables with a 60 deg C limit by that column. */
export function ampacityA(size: string, metal: Metal, method: Method | undefined): number {
  const row = ampacities.find((candidate) => candidate['size_awg_kcmil'] === size.replace(' kcmil', ''))
  const column = `${metal === 'copper' ? 'cu' : 'al'}_${method === 'NM' || method === 'UF' ? 60 : 75}C`
  const found = cell(row?.[column])
  if (found === undefined) throw new Error(`no ${size} ${metal} in ${column}`)
  return found
}

export const nextRatingA = (amperes: number): number => ratings.find((rating) => atMost(amperes, rating)) ?? Infinity

/** What the sources add to a sum: first devices in 2011, 125 percent of the currents since. */
const added = (edition: string, sources: readonly TreeSource[]): number =>
  edition === 'NEC 2011'
    ? sum(sources.flatMap((source) => source.firstDevicesA))
    : 1.25 * sum(sources.map((source) => source.currentA))

const since = (edition: string, year: number): boolean => Number(edition.slice(-4)) >= year

const opinion = (id: string, tests: readonly (readonly [boolean, string])[], ways: readonly Way[] = []): Opinion => {
  const against = tests.filter(([passes]) => !passes).map(([, text]) => text)
  return { id, complies: against.length === 0, against, ways }
}

/** Device ahead of a busbar: its own main, else that of its feeder. */
function deviceAheadA(tree: Tree, panel: TreePanel): number {
  const feeder = tree.feeders.find(({ to }) => to === panel.id)
  const deviceA = panel.mainA ?? feeder?.deviceA
  if (deviceA === undefined) throw new Error(`${panel.id} has neither main nor feeder`)
  return deviceA
}

/**
 * Largest current that can come to a busbar from the side of the utility: its main, or all that its feeder brings, which
 * is more than the device of the feeder where sources join it behind that device.
 */
function fromUtilityA(tree: Tree, panel: TreePanel): number {
  const feeder = tree.feeders.find(({ to }) => to === panel.id)
  const onTaps = panel.mainA === undefined && feeder !== undefined ? sourcesOnTaps(tree, feeder) : []
  return deviceAheadA(tree, panel) + added(tree.edition, onTaps)
}

const sourcesOnTaps = (tree: Tree, feeder: TreeFeeder): readonly TreeSource[] =>
  tree.sources.filter(
    (source) => source.parallel && tree.taps.some((tap) => tap.id === source.on && tap.feeder === feeder.id),
  )

export function judgePanel(tree: Tree, panel: TreePanel): Opinion {
  const mainA = fromUtilityA(tree, panel)
  const through = sourcesThrough(tree, panel.id)
  const ways = through.length === 0 ? [] : waysOf(tree, panel, mainA, through)
  const load = panel.loadA ?? 0
  return opinion(
    panel.id,
    [
      [atMost(mainA, panel.busA), `device ${mainA} A over busbar ${panel.busA} A (408.36)`],
      [atMost(load, Math.min(panel.busA, deviceAheadA(tree, panel))), `load ${load} A over busbar or device`],
      [ways.length === 0 || ways.some((way) => way.holds), 'no way of 705.12 holds'],
    ],
    ways,
  )
}

function waysOf(tree: Tree, panel: TreePanel, mainA: number, through: readonly TreeSource[]): readonly Way[] {
  const { edition } = tree
  const { busA } = panel
  const sumA = mainA + added(edition, through)
  const way = (name: Way['way'], also: boolean, leftA: number | undefined, limitA: number): Way => ({
    way: name,
    holds: also && atMost(mainA, busA) && leftA !== undefined && atMost(leftA, limitA),
    sumA: leftA,
    limitA,
  })
  const backfed = [
    ...tree.sources.filter((source) => source.parallel && source.on === panel.id),
    ...tree.feeders.filter((feeder) => feeder.from === panel.id && sourcesThrough(tree, feeder.id).length > 0),
  ]
  const atEnd = backfed.every((device) => device.atOppositeEnd)
  const loadFits = atMost(panel.loadA ?? 0, busA)
  const ways = [way('all', true, sumA, busA), way('120', atEnd && !panel.centreFed && loadFits, sumA, 1.2 * busA)]
  if (since(edition, 2014)) {
    const others = [
      ...tree.feeders.filter(({ from }) => from === panel.id),
      ...tree.sources.filter(({ on }) => on === panel.id),
    ]
    const breakersA = panel.breakersA && sum([...panel.breakersA, ...others.map(({ deviceA }) => deviceA)])
    ways.push(way('breaker sum', true, breakersA, busA))
  }
  // Which end is not said, so two devices may stand at both.
  if (since(edition, 2017))
    ways.push(way('centre-fed', panel.centreFed && atEnd && backfed.length === 1 && loadFits, sumA, 1.2 * busA))
  const control = controlOf(tree, panel, through)
  if (control !== undefined) ways.push(control)
  return ways
}

/** 80 percent of the busbar for the setting and all that the system does not control. */
function controlOf(tree: Tree, panel: TreePanel, through: readonly TreeSource[]): Way | undefined {
  const { control, edition } = tree
  if (control?.panels.includes(panel.id) !== true || !since(edition, 2020)) return undefined
  const besideA = through
    .filter(({ id }) => control.uncontrolled.includes(id))
    .map((source) => Math.max(source.deviceA, 1.25 * source.currentA))
  const sumA = control.settingA + sum(besideA)
  const limitA = 0.8 * panel.busA
  const deviceA = deviceAheadA(tree, panel)
  const proven =
    control.documented && control.locked && atMost(control.settingA, deviceA) && atMost(deviceA, panel.busA)
  return { way: 'power control', holds: proven && atMost(sumA, limitA), sumA, limitA }
}

export function judgeFeeder(tree: Tree, feeder: TreeFeeder): Opinion {
  const { edition } = tree
  const { deviceA } = feeder
  const conductorA = ampacityA(feeder.size, feeder.metal, feeder.method)
  const through = sourcesThrough(tree, feeder.id)
  const need = 1.25 * sum(through.map((source) => source.currentA))
  const end = tree.panels.find(({ id }) => id === feeder.to)
  const loadA =
    (end?.loadA ?? 0) + sum(tree.taps.filter((tap) => tap.feeder === feeder.id).map((tap) => tap.loadA ?? 0))
  const along = sourcesOnTaps(tree, feeder).some(({ on }) => tree.taps.some(({ id, farEnd }) => id === on && !farEnd))
  const sumA = deviceA + added(edition, through)
  const beyond = atMost(sumA, conductorA) || (end?.mainA !== undefined && atMost(end.mainA, conductorA))
  const protects = atMost(deviceA, conductorA) || (!ratings.includes(conductorA) && deviceA === nextRatingA(conductorA))
  return opinion(feeder.id, [
    [protects, `device ${deviceA} A over ${conductorA} A (240.4)`],
    [atMost(loadA, Math.min(deviceA, conductorA)), `load ${loadA} A over device or conductor (215)`],
    [atMost(need, Math.min(deviceA, conductorA)), `1.25 I = ${need} A over device or conductor`],
    [
      edition !== 'NEC 2011' || through.length === 0 || atMost(sumA, 1.2 * conductorA),
      `sum of devices ${sumA} A over the conductor (705.12(D)(2))`,
    ],
    [!along || beyond, `${sumA} A beyond the tap over ${conductorA} A`],
  ])
}

const cables: readonly (Method | undefined)[] = ['MC', 'SE', 'NM', 'UF', undefined]

export function judgeTap(tree: Tree, tap: TreeTap): Opinion {
  const feeder = tree.feeders.find(({ id }) => id === tap.feeder)
  if (feeder === undefined) throw new Error(`no feeder ${tap.feeder}`)
  const conductorA = ampacityA(tap.size, tap.metal, tap.method)
  const through = sourcesThrough(tree, feeder.id)
  const here = tree.sources.filter(({ on }) => on === tap.id)
  const endA = here.length > 0 ? sum(here.map(({ deviceA }) => deviceA)) : (tap.endDeviceA ?? 0) * tap.endDevices
  const devices = tree.edition === 'NEC 2011' || since(tree.edition, 2023)
  const feederA =
    feeder.deviceA +
    (devices
      ? sum(through.flatMap((source) => source.firstDevicesA))
      : 1.25 * sum(through.map((source) => source.currentA)))
  const carries = atMost(Math.max(endA, tap.loadA ?? 0), conductorA)
  const short =
    tap.lengthFt <= 10 && !cables.includes(tap.method) && (!tap.leavesEnclosure || atMost(feederA / 10, conductorA))
  const longer = tap.lengthFt <= 25 && tap.endDevices === 1 && atMost(feederA / 3, conductorA)
  const outside = tap.outdoors && tap.endDevices === 1
  const needA = 1.25 * sum(here.filter(({ parallel }) => parallel).map(({ currentA }) => currentA))
  return opinion(tap.id, [
    [carries && (short || longer || outside), `${conductorA} A meets no rule of 240.21(B)`],
    [atMost(needA, conductorA), `1.25 I = ${needA} A over ${conductorA} A`],
  ])
}

/** Every panel, feeder and tap, by id. */
export function judgeByHand(tree: Tree): ReadonlyMap<string, Opinion> {
  const all = [
    ...tree.panels.map((panel) => judgePanel(tree, panel)),
    ...tree.feeders.map((feeder) => judgeFeeder(tree, feeder)),
    ...tree.taps.map((tap) => judgeTap(tree, tap)),
  ]
  return new Map(all.map((one) => [one.id, one]))
}
