import { pathOfPv, PV_SOURCE, type PanelNode, type SourceNode, type Tree } from '../distribution/index.js'

export const pvOf = (tree: Tree): SourceNode | undefined => tree.sources.find(({ id }) => id === PV_SOURCE)

/** Panels on the way of the PV system to the utility, from the service inwards. */
export function panelsOnWay(tree: Tree): PanelNode[] {
  const way = pathOfPv(tree)
  return tree.panels.filter(({ id }) => way.includes(id))
}

/** Panel that the service feeds on the way of the PV system; of a supply-side connection the first one. */
export function firstPanel(tree: Tree): PanelNode | undefined {
  return panelsOnWay(tree)[0] ?? tree.panels[0]
}

export const withPanel = (tree: Tree, id: string, change: Partial<PanelNode>): Tree => ({
  ...tree,
  panels: tree.panels.map((panel) => (panel.id === id ? { ...panel, ...change } : panel)),
})

export const withPv = (tree: Tree, change: Partial<SourceNode>): Tree => ({
  ...tree,
  sources: tree.sources.map((source) => (source.id === PV_SOURCE ? { ...source, ...change } : source)),
})

/** Every breaker that sources feed back through on the way at the end opposite to the feed. */
export function atOppositeEnds(tree: Tree): Tree {
  const way = new Set(pathOfPv(tree))
  const far = <T extends { readonly oppositeEnd: boolean | undefined }>(device: T): T => ({
    ...device,
    oppositeEnd: true,
  })
  return {
    ...tree,
    sources: tree.sources.map((source) =>
      source.at !== 'supply_side' && 'panel' in source.at && way.has(source.at.panel)
        ? { ...source, devices: source.devices.map(far) }
        : source,
    ),
    feeders: tree.feeders.map((feeder) =>
      way.has(feeder.from) && way.has(feeder.id) ? { ...feeder, device: far(feeder.device) } : feeder,
    ),
  }
}
