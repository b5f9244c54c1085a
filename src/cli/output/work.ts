import { formatQuantity, formatSource, substitution, writtenStep, type Step } from '../../worksheet/index.js'

/** A step as the four printers (text, Markdown, packet, JSON reader) show it: formula, numbers put in, result, source. */
export interface WorkLines {
  readonly id: string
  readonly says: string
  readonly formula: string
  /** Formula, numbers put in and result as a hand would write them, in one line or two. */
  readonly written: readonly string[]
  /** The formula with numbers put in; undefined when it is words. */
  readonly numbers: string | undefined
  /** `Imax = 8.47 A` */
  readonly result: string
  /** `8.47 <= 16 A: holds` or `... FAILS`; undefined when the step checks nothing. */
  readonly check: string | undefined
  /** `N = 7 modules (arrays.main.modules)`, one an input. */
  readonly inputs: readonly string[]
  readonly source: string
  readonly limits: string | undefined
}

export function workLines(step: Step): WorkLines {
  const { symbol, value, unit } = step.result
  return {
    id: step.id,
    says: step.says,
    formula: step.formula,
    written: writtenStep(step),
    numbers: substitution(step),
    result: `${symbol} = ${formatQuantity(value, unit)}`,
    check:
      step.check === undefined
        ? undefined
        : `${formatQuantity(value, '')} ${step.check.relation} ${formatQuantity(step.check.limit, unit)}: ${step.check.pass ? 'holds' : 'FAILS'}`,
    inputs: step.inputs.map((input) => `${input.symbol} = ${formatQuantity(input.value, input.unit)} (${input.from})`),
    source: formatSource(step.source),
    limits: step.limits,
  }
}

/** Steps in order, grouped by the first part of their id. */
export function groupSteps(steps: readonly Step[]): Map<string, Step[]> {
  const groups = new Map<string, Step[]>()
  for (const step of steps) {
    const group = step.id.split('.')[0] ?? step.id
    groups.set(group, [...(groups.get(group) ?? []), step])
  }
  return groups
}
