import type { Source } from './source.js'

/** A number that goes into a step, with the place it comes from. */
export interface StepInput {
  /** Symbol as it stands in `formula`. */
  readonly symbol: string
  readonly value: number | string
  readonly unit: string
  /** Path in project.yaml, id of an earlier step, or name of a table. */
  readonly from: string
}

/** One line of a hand calculation: the formula, the numbers put in, the result, and who says so. */
export interface Step {
  /** Stable and dotted, unique in a worksheet: `wire.b1.s2.ambient-correction`. */
  readonly id: string
  /** One plain sentence that says what is worked out. */
  readonly says: string
  /** Symbolic formula in plain text: `I_max = N * I_out`. */
  readonly formula: string
  readonly inputs: readonly StepInput[]
  readonly result: { readonly symbol: string; readonly value: number | string; readonly unit: string }
  readonly check?: {
    readonly relation: '<=' | '>='
    readonly limit: number
    readonly pass: boolean
  }
  readonly source: Source
  /** Where the method stops being valid, when that matters to the reader. */
  readonly limits?: string
}
