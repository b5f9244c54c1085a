import type { ConductorSize } from './conductor-sizes.js'

/** Ampacities, A, in the 60, 75 and 90 deg C columns; undefined where that metal is not made so small. */
export interface AmpacityRow {
  readonly size: ConductorSize
  readonly copper: readonly [at60: number, at75: number, at90: number]
  readonly aluminum: readonly [at60: number, at75: number, at90: number] | undefined
}
