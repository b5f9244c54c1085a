import type { Source } from '../../worksheet/index.js'

/** What a method gives. */
export interface MethodLoad {
  readonly va: number
  /** Without the new loads, VA, where the method tells. */
  readonly beforeVa?: number
  readonly source: Source
}
