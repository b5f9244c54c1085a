import type { Source } from './source.js'

/** A value that the project did not state and that a stage therefore took from a default. Never used for safety inputs. */
export interface Assumption {
  /** Dotted path in project.yaml where the person can state it: `losses.unequal_modules_pct`. */
  readonly path: string
  readonly value: number | string
  /** Unit of `value`; '' for a name or a pure number. */
  readonly unit: string
  /** One sentence: why this value. */
  readonly why: string
  readonly source: Source
}
