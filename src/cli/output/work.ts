import { formatSource, type Step } from '../../worksheet/index.js'
import { formatSignificant } from '../../report/index.js'

/** A step as the four printers (text, Markdown, packet, JSON reader) show it: formula, numbers put in, result, source. */
export interface WorkLines {
  readonly id: string
  readonly says: string
  readonly formula: string
  /** The right-hand side with numbers put in; undefined when the formula names none of its inputs. */
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
    numbers: putIn(step),
    result: `${symbol} = ${quantity(value, unit)}`,
    check:
      step.check === undefined
        ? undefined
        : `${quantity(value, '')} ${step.check.relation} ${quantity(step.check.limit, unit)}: ${step.check.pass ? 'holds' : 'FAILS'}`,
    inputs: step.inputs.map((input) => `${input.symbol} = ${quantity(input.value, input.unit)} (${input.from})`),
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

function quantity(value: number | string, unit: string): string {
  const text = typeof value === 'number' ? formatSignificant(value) : value
  return unit === '' ? text : `${text} ${unit}`
}

function putIn(step: Step): string | undefined {
  const right = step.formula.includes('=') ? step.formula.slice(step.formula.indexOf('=') + 1).trim() : step.formula
  const values = new Map(step.inputs.map((input) => [input.symbol, input.value]))
  const symbols = [...values.keys()].filter((symbol) => symbol !== '').toSorted((a, b) => b.length - a.length)
  if (symbols.length === 0) return undefined
  const escaped = symbols.map((symbol) => symbol.replace(/[.*+?^${}()|[\]\\/]/gu, '\\$&'))
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}_])(?:${escaped.join('|')})(?![\\p{L}\\p{N}_])`, 'gu')
  const numbers = right.replace(pattern, (symbol) => {
    const value = values.get(symbol) ?? symbol
    if (typeof value === 'string') return value
    return value < 0 ? `(${formatSignificant(value)})` : formatSignificant(value)
  })
  return numbers === right ? undefined : numbers
}
