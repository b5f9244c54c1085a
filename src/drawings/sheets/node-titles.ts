import type { WiringValues } from '../../electrical/index.js'
import { nodeTitle } from '../node-title.js'

/** What the drawings call every part of the installation, by its id. */
export function nodeTitles(wiring: WiringValues): Map<string, string> {
  return new Map(wiring.distribution.map((node) => [node.id, nodeTitle(node)]))
}
