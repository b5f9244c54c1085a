import type { SourceStanding } from '../../worksheet/index.js'
import type { Edition } from './editions.js'

/** The edition whose text nobody read for this project. */
export const EDITION_NOT_READ = 'NEC 2026'

/** The edition that 2026 is carried over from where no source reports a change. */
export const CARRIED_FROM = 'NEC 2023'

/** Editions whose tables are written out. */
export type WrittenEdition = Exclude<Edition, typeof EDITION_NOT_READ>

/** How far something is known of 2026 that is carried over: never as read, and what is from memory stays so. */
export function carriedStanding(standing: SourceStanding): SourceStanding {
  return standing === 'read' ? 'secondary' : standing
}

/**
 * Rows by edition, with those of 2023 once more for 2026.
 *
 * @param carry What becomes of a row of 2023: its standing, and what sources report as changed.
 */
export function withCarried<Row extends { readonly edition: Edition }>(
  rows: readonly Row[],
  carry: (row: Row) => Row,
): Row[] {
  const of2023 = rows.filter((row) => row.edition === CARRIED_FROM)
  return [...rows, ...of2023.map((row) => ({ ...carry(row), edition: EDITION_NOT_READ }))]
}

/** A list of editions, with 2026 where 2023 is in it. */
export function editionsCarried(list: readonly Edition[]): Edition[] {
  return list.includes(CARRIED_FROM) ? [...list, EDITION_NOT_READ] : [...list]
}
