import type { Electrical, Project } from '../../src/project/index.js'
import { newJob, type Job } from '../../src/electrical/system/index.js'
import type { Edition } from '../../src/tables/nec/index.js'
import { Worksheet, type Result } from '../../src/worksheet/index.js'
import { context, microProject } from './demo.js'

/** A job of the invented house, and what it has recorded so far. */
export function jobOf(
  change: Partial<Electrical>,
  edition: Edition = 'NEC 2023',
  more: Partial<Project> = {},
): { readonly job: Job; readonly result: () => Result<undefined> } {
  const worksheet = new Worksheet()
  const job = newJob({ ...microProject(change), ...more }, edition, context(), worksheet)
  return { job, result: () => worksheet.result(undefined) }
}

/** Works a recorded formula out anew from its inputs: what stands right of `=`, with `min` and `max`. */
export function recompute({
  formula,
  inputs,
}: {
  readonly formula: string
  readonly inputs: readonly { readonly symbol: string; readonly value: number | string }[]
}): number {
  const right = formula.slice(formula.indexOf('=') + 1)
  const names = inputs.map(({ symbol }) => symbol)
  const body = `const { min, max } = Math; return (${right})`
  // oxlint-disable-next-line typescript/no-implied-eval -- formulas of this program, in a test
  const value: unknown = new Function(...names, body)(...inputs.map((input) => input.value))
  return Number(value)
}
