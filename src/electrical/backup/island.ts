import type { Amperes } from '../../values/index.js'
import {
  flowThroughPanel,
  panelById,
  panelsFrom,
  type PanelNode,
  type SourceNode,
  type Tree,
} from '../distribution/index.js'

/** What stays on when the grid is away. */
export interface Island {
  readonly panel: PanelNode
  /** Panels behind the device that cuts the house off, the first one among them. */
  readonly panels: readonly string[]
  readonly sources: readonly SourceNode[]
  /** Sum of the first devices of all its sources, A. */
  readonly devicesA: Amperes
}

/** The panel that the storage carries, with all below it; undefined when there is no such panel. */
export function islandOf(tree: Tree, panelId: string): Island | undefined {
  const panel = panelById(tree, panelId)
  if (panel === undefined) return undefined
  const { sources, firstDevicesA } = flowThroughPanel(tree, panel)
  return { panel, panels: panelsFrom(tree, panelId), sources, devicesA: firstDevicesA }
}

/** Device ahead of a panel, A: its own main, else that of its feeder. */
export function deviceAheadA(tree: Tree, panel: PanelNode): Amperes | undefined {
  return panel.mainA ?? tree.feeders.find(({ to }) => to === panel.id)?.device.ratingA
}

/** Id of the panel that the storage carries where none is named: the first one of the house. */
export const firstPanel = (tree: Tree): string | undefined =>
  tree.panels.find(({ id }) => !tree.feeders.some(({ to }) => to === id))?.id
