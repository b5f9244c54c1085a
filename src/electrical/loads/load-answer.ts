import type { LoadCalculation } from '../../project/index.js'
import type { Source } from '../../worksheet/index.js'

/** Load of the dwelling at its service. */
export interface ServiceLoad {
  readonly va: number
  /** Line current, A. */
  readonly a: number
  readonly method: LoadCalculation['method']
  readonly section: string
  readonly source: Source
  /** Least service disconnect of a one-family dwelling, A, however small the load is. */
  readonly leastServiceA: number
  /** The larger of `a` and `leastServiceA`: a main breaker of less is too small, A. */
  readonly neededA: number
  /** Without the loads that the project adds, where the method tells. */
  readonly before: { readonly va: number; readonly a: number } | undefined
}
