import { SOURCE_FACTOR } from '../../tables/nec/index.js'
import type { Amperes } from '../../values/index.js'
import type { FeederNode, PanelNode, SourceNode, TapNode, Tree } from './tree.js'

/** What sources put through one place. */
export interface Flow {
  readonly sources: readonly SourceNode[]
  /** Sum of rated outputs, A. */
  readonly currentA: Amperes
  /** 125 percent of it, A. */
  readonly requiredA: Amperes
  /** Sum of the first devices after the inverters, A. */
  readonly firstDevicesA: Amperes
}

/** Feeder that a panel hangs on; undefined for one at the service. */
export const feederTo = (tree: Tree, panel: string): FeederNode | undefined =>
  tree.feeders.find(({ to }) => to === panel)

/** Panels below one, with itself. */
export function panelsFrom(tree: Tree, panel: string): string[] {
  return [panel, ...tree.feeders.filter(({ from }) => from === panel).flatMap(({ to }) => panelsFrom(tree, to))]
}

/** Sources that run in parallel with the utility and pass through the busbar of a panel on their way to it. */
export function flowThroughPanel(tree: Tree, { id }: PanelNode): Flow {
  const below = panelsFrom(tree, id)
  const feeders = new Set(tree.feeders.filter(({ from }) => below.includes(from)).map((feeder) => feeder.id))
  const taps = new Set(tree.taps.filter((tap) => feeders.has(tap.feeder)).map((tap) => tap.id))
  return flowOf(tree, (source) => lands(source, below, taps))
}

/** Sources that pass through a feeder: those on its taps and those below. */
export function flowThroughFeeder(tree: Tree, feeder: FeederNode): Flow {
  const below = panelsFrom(tree, feeder.to)
  const inside = new Set(
    tree.taps
      .filter((tap) => tap.feeder === feeder.id || below.includes(feederById(tree, tap.feeder)?.from ?? ''))
      .map(({ id }) => id),
  )
  return flowOf(tree, (source) => lands(source, below, inside))
}

/** Sources on a tap. */
export const flowOnTap = (tree: Tree, { id }: TapNode): Flow => flowOf(tree, ({ at }) => isTap(at, id))

/** Sources ahead of the service disconnect. */
export const flowOnSupplySide = (tree: Tree): Flow => flowOf(tree, ({ at }) => at === 'supply_side')

/** Sources on the taps of a feeder that do not stand at its far end. */
export function flowAlong(tree: Tree, { id }: FeederNode): Flow {
  const taps = tree.taps.filter((tap) => tap.feeder === id && tap.position === 'along')
  return flowOf(tree, ({ at }) => taps.some((tap) => isTap(at, tap.id)))
}

/** Sources on the taps of a feeder, wherever they join it. */
export function flowOnTaps(tree: Tree, { id }: FeederNode): Flow {
  const taps = tree.taps.filter((tap) => tap.feeder === id)
  return flowOf(tree, ({ at }) => taps.some((tap) => isTap(at, tap.id)))
}

/** What sources add to the device ahead of them, A: 125 percent of their currents; 2011 counts their first devices. */
export const addedA = ({ edition }: Tree, { requiredA, firstDevicesA }: Flow): Amperes =>
  edition === 'NEC 2011' ? Math.max(firstDevicesA, requiredA) : requiredA

export const feederById = (tree: Tree, id: string): FeederNode | undefined =>
  tree.feeders.find((feeder) => feeder.id === id)

export const panelById = (tree: Tree, id: string): PanelNode | undefined => tree.panels.find((panel) => panel.id === id)

const isTap = (at: SourceNode['at'], id: string): boolean => at !== 'supply_side' && 'tap' in at && at.tap === id

function lands({ at }: SourceNode, panels: readonly string[], taps: ReadonlySet<string>): boolean {
  if (at === 'supply_side') return false
  return 'panel' in at ? panels.includes(at.panel) : taps.has(at.tap)
}

function flowOf(tree: Tree, test: (source: SourceNode) => boolean): Flow {
  const sources = tree.sources.filter((source) => source.runsInParallel && test(source))
  const currentA = sources.reduce((sum, source) => sum + source.currentA, 0)
  return {
    sources,
    currentA,
    requiredA: SOURCE_FACTOR * currentA,
    firstDevicesA: sources.flatMap(({ firstDevicesA }) => firstDevicesA).reduce((sum, deviceA) => sum + deviceA, 0),
  }
}
