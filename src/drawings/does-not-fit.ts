import type { Finding } from '../worksheet/index.js'
import { flattenSheet, type Sheet } from './model/index.js'

/** Most texts that a finding names. */
const MOST_NAMED = 5

/**
 * Sheets that have no room for all of their texts, not even as keyed notes: each stops the packet, since an overprint may hide
 * what a reviewer must read.
 */
export function doesNotFit(sheets: readonly Sheet[]): Finding[] {
  return sheets.flatMap((sheet): Finding[] => {
    const { collisions } = flattenSheet(sheet)
    if (collisions.length === 0) return []
    const named = collisions.slice(0, MOST_NAMED).map((text) => `'${text}'`)
    const more = collisions.length > MOST_NAMED ? ` and ${collisions.length - MOST_NAMED} more` : ''
    return [
      {
        severity: 'error',
        id: 'drawings.does-not-fit',
        where: 'drawings',
        message: `sheet ${sheet.id} on ${sheet.size.name} paper has no room for ${named.join(', ')}${more}`,
        fix: 'Draw on larger paper with --size, shorten the names, or lower drawings.least_text_in if the authority allows it.',
      },
    ]
  })
}
