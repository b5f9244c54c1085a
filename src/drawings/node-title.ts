import type { NodeValues } from '../electrical/index.js'

/** What the drawings call a part of the installation that has no name of its own. */
const UNNAMED: Readonly<Record<string, string>> = { panel: 'Main panel', combiner: 'AC combiner', service: 'Service' }

/** Name of a node on drawings and labels. */
export function nodeTitle({ id, name }: Pick<NodeValues, 'id' | 'name'>): string {
  return name === id ? (UNNAMED[id] ?? name) : name
}
