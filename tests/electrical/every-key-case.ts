/** Projects that the cases start from. */
export type Base =
  | 'micro'
  | 'tree'
  | 'string'
  | 'supply'
  | 'wye'
  | 'short'
  | 'boxes'
  | 'drawn'
  | 'shutdown'
  | 'house'
  | 'house_tree'
  | 'bill'
  | 'bill_string'

/** A key of `electrical` with a value that has to move something. */
export interface Case {
  readonly base: Base
  /** Values of other keys that stand on both sides, by their way under `electrical`. */
  readonly given: Readonly<Record<string, unknown>>
  /** Value on the one side; as the base has it when left out. */
  readonly before: unknown
  /** Value on the other side; undefined takes the key away. */
  readonly after: unknown
  /** The key with ids in place of the stars, where they are not the usual ones. */
  readonly path: string | undefined
}

type More = Partial<Pick<Case, 'given' | 'before' | 'path'>>

/** Cases of a base. */
export const on =
  (base: Base) =>
  (after: unknown, more: More = {}): Case => ({ base, given: {}, before: undefined, path: undefined, ...more, after })

/** A breaker of a type that has to be marked for backfeed. */
export const gfci = (path: string) => ({ [path]: 'gfci' })
