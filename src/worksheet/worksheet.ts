import type { Assumption } from './assumption.js'
import type { Finding } from './finding.js'
import { sortFindings } from './finding.js'
import type { Step } from './step.js'

/** What every stage returns: the values, and their proof. */
export interface Result<Values> {
  readonly values: Values
  readonly worksheet: readonly Step[]
  readonly findings: readonly Finding[]
  readonly assumptions: readonly Assumption[]
}

/** Collects the proof while a stage works. One worksheet per stage and run. */
export class Worksheet {
  readonly #steps = new Map<string, Step>()
  readonly #findings: Finding[] = []
  readonly #assumptions = new Map<string, Assumption>()

  /**
   * Records a step and hands its numeric result back, so that a calculation reads
   * `const current = worksheet.step({...})`.
   *
   * @throws Error when the id was used before (a defect of ours, not of the project).
   */
  step(step: Step & { readonly result: { readonly value: number } }): number {
    this.note(step)
    return step.result.value
  }

  /** Records a step whose result may be a name, such as a trade size. */
  note(step: Step): void {
    if (this.#steps.has(step.id)) throw new Error(`worksheet step '${step.id}' recorded twice`)
    this.#steps.set(step.id, step)
  }

  /** Tells the person something; the same thing about the same place is told once. */
  find(finding: Finding): void {
    const said = this.#findings.some(
      (other) => other.id === finding.id && other.where === finding.where && other.message === finding.message,
    )
    if (!said) this.#findings.push(finding)
  }

  /** Records that a default was used, once per path, and hands the default back. */
  assume<Value extends number | string>(assumption: Assumption & { readonly value: Value }): Value {
    if (!this.#assumptions.has(assumption.path)) this.#assumptions.set(assumption.path, assumption)
    return assumption.value
  }

  /** Takes over the proof of an earlier result, so that a later stage's result is complete by itself. */
  include(earlier: Result<unknown>): void {
    for (const step of earlier.worksheet) this.#steps.set(step.id, step)
    for (const finding of earlier.findings) this.find(finding)
    for (const assumption of earlier.assumptions) this.#assumptions.set(assumption.path, assumption)
  }

  result<Values>(values: Values): Result<Values> {
    return {
      values,
      worksheet: [...this.#steps.values()],
      findings: sortFindings(this.#findings),
      assumptions: [...this.#assumptions.values()],
    }
  }
}
