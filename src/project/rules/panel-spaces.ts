import type { Segments } from '../path.js'
import type { Rule } from './rule.js'

/** No panel has more free spaces than spaces. */
export const checkPanelSpaces: Rule = ({ electrical }, report) => {
  const check = (path: Segments, total: number | undefined, free: number | undefined): void => {
    if (total === undefined || free === undefined || free <= total) return
    report([...path, 'spaces_free'], `${free} free spaces are more than the ${total} of spaces_total`)
  }
  check(['electrical', 'panel'], electrical?.panel?.spaces_total, electrical?.panel?.spaces_free)
  for (const [id, panel] of Object.entries(electrical?.distribution?.panels ?? {}))
    check(['electrical', 'distribution', 'panels', id], panel.spaces_total, panel.spaces_free)
}
