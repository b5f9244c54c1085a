import { inCapitals } from './model/index.js'
import type { NodeValues } from '../electrical/index.js'

/** What the drawings call a part of the installation that has no name of its own. */
const UNNAMED: Readonly<Record<string, string>> = { panel: 'Main panel', combiner: 'AC combiner', service: 'Service' }

/** Name of a node on drawings and labels. */
export function nodeTitle({ id, name }: Pick<NodeValues, 'id' | 'name'>): string {
  return name === id ? (UNNAMED[id] ?? name) : name
}

/** Longest name that stands on a label, characters. */
const LABEL_CHARACTERS = 40

/** Name of a node in the capitals of a label; one that is longer ends in dots. */
export function labelTitle(node: Pick<NodeValues, 'id' | 'name'>): string {
  const title = inCapitals(nodeTitle(node))
  return title.length <= LABEL_CHARACTERS ? title : `${title.slice(0, LABEL_CHARACTERS - 1).trimEnd()}…`
}
