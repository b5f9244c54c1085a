import { CARRIED_FROM, EDITION_NOT_READ } from './edition-2026.js'
import { editions, type Edition } from './editions.js'
import type { LabelWords } from './label-word-row.js'
import { labelWordRows } from './label-word-rows.js'

/**
 * The words of a label in an edition; where its own are not at hand, those of the nearest later edition that was read,
 * else of the nearest later one, else of the latest before. Words of a fire code stand for every edition.
 * 2026 has the words of 2023, unconfirmed.
 *
 * @returns undefined when no edition has words for it. The row's own `edition` tells where the words come from.
 */
export function labelWords(id: string, asked: Edition): LabelWords | undefined {
  const edition = asked === EDITION_NOT_READ ? CARRIED_FROM : asked
  const rows = labelWordRows
    .filter((row) => row.id === id)
    .map((row) => ({ row, at: editions.findIndex((each) => each === row.edition) }))
    .sort((a, b) => a.at - b.at)
  const at = editions.indexOf(edition)
  const later = rows.filter((each) => each.at > at && each.row.status !== 'no label')
  return (
    rows.find((each) => each.at === at) ??
    later.find((each) => each.row.standing === 'read') ??
    later[0] ??
    rows.findLast((each) => each.at >= 0 && each.at < at && each.row.status !== 'no label') ??
    rows.find((each) => each.at < 0)
  )?.row
}

/** A phrase of the code on one line. */
export function onOneLine(phrase: string): string {
  return phrase.replaceAll(' / ', ' ')
}
