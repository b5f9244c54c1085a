import { MOST_ENTRIES, MOST_HOUSES } from '../project/index.js'

/** How much patterns and folders may lead to. */
export interface LookedAt {
  /** Files that are found. */
  readonly houses: number
  /** Files and folders that are looked past on the way. */
  readonly entries: number
}

export const LOOKED_AT: LookedAt = { houses: MOST_HOUSES, entries: MOST_ENTRIES }
