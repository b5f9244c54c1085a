import type { LoadCalculation } from '../../project/index.js'
import { factorsOf, loadSource, type LoadFactors } from '../../tables/nec/index.js'
import type { Finding, Source, StepInput } from '../../worksheet/index.js'
import type { Job } from '../system/index.js'

export const WHERE = 'electrical.load_calculation'

/** One load calculation. */
export interface LoadJob {
  readonly job: Job
  readonly stated: LoadCalculation
  readonly factors: LoadFactors
  /** A section of the article on load calculations in this edition. */
  readonly section: (suffix: string, standing?: Source['standing']) => Source
}

export const loadJob = (job: Job, stated: LoadCalculation): LoadJob => ({
  job,
  stated,
  factors: factorsOf(job.edition),
  section: (suffix, standing) => loadSource(job.edition, suffix, standing),
})

/** A load that is a sum or a product, recorded with its formula; its value in VA is handed back. */
export interface LoadStep {
  readonly id: string
  readonly says: string
  /** Right side of the formula. */
  readonly formula: string
  /** Symbol, value, unit and place of each input. */
  readonly inputs: readonly (readonly [symbol: string, value: number, unit: string, from: string])[]
  readonly symbol: string
  readonly va: number
  readonly source: Source
  readonly limits?: string
}

export function recordLoad({ job }: LoadJob, step: LoadStep): number {
  const { id, says, formula, symbol, va, source, limits } = step
  const inputs: StepInput[] = step.inputs.map(([name, value, unit, from]) => ({ symbol: name, value, unit, from }))
  return job.worksheet.step({
    id: `wire.load.${id}`,
    says,
    formula: `${symbol} = ${formula}`,
    inputs,
    result: { symbol, value: va, unit: 'VA' },
    source,
    ...(limits === undefined ? {} : { limits }),
  })
}

/** Something that makes the calculation impossible: told as an error, and there is no load. */
export function refuse({ job }: LoadJob, finding: Finding & { readonly severity: 'error' }): undefined {
  job.worksheet.find(finding)
  return undefined
}

/** Something that the chosen method does not look at. */
export function tellUnused({ job, stated, section }: LoadJob, keys: readonly string[]): void {
  for (const key of keys)
    job.worksheet.find({
      severity: 'note',
      id: 'wire.load-unused',
      message: `${key} is not used by the ${stated.method} method`,
      where: `${WHERE}.${key}`,
      source: section('.87'),
      fix: 'Take it out, or choose the method that uses it',
    })
}

/** Something without which the load is too small. */
export function tellMissing({ job }: LoadJob, key: string, message: string, source: Source): void {
  job.worksheet.find({
    severity: 'warning',
    id: 'wire.load-not-stated',
    message,
    where: `${WHERE}.${key}`,
    source,
    fix: 'State what there is; state {} where there is none',
  })
}
