import type { Step } from '../../worksheet/index.js'
import { amount } from './amount.js'

/** A row of a calculation: one step, or several that are worked out alike with the same numbers. */
export interface CalculationRow {
  /** What the steps are about, each once; empty where they are about the whole. */
  readonly subjects: readonly string[]
  /** What is worked out, for all of them. */
  readonly says: string
  /** One of them; formula, numbers, result, check and source of all are printed the same. */
  readonly step: Step
  readonly ids: readonly string[]
}

/** Steps that stand together under a heading. */
export interface CalculationGroup {
  readonly subjects: readonly string[]
  readonly rows: readonly CalculationRow[]
}

const ZONE = /\bzone (?<zone>\w+)/u

/**
 * The rows of a calculation, in the order of their first step: steps that differ in nothing but what they are about, or in the
 * wind zone, share one.
 *
 * @param subjectOf What a step is about; undefined for the whole.
 */
export function calculationRows(
  steps: readonly Step[],
  subjectOf: (step: Step) => string | undefined,
): CalculationRow[] {
  const rows = new Map<string, { subjects: string[]; zones: string[]; ids: string[]; step: Step }>()
  for (const step of steps) {
    const subject = subjectOf(step)
    const zone = ZONE.exec(step.says)?.groups?.['zone']
    const { id, says, formula, inputs, result, check, source } = step
    // As printed: what differs beyond that does not make a row of its own.
    const key = JSON.stringify([
      withoutWord(says, subject).replace(ZONE, 'zone'),
      formula,
      ...[...inputs, result].map(({ symbol, value, unit }) => [symbol, amount(value, unit)]),
      check === undefined ? '' : [check.relation, amount(check.limit, ''), check.pass],
      source,
    ])
    const row = rows.get(key)
    if (row === undefined) {
      rows.set(key, {
        subjects: subject === undefined ? [] : [subject],
        zones: zone === undefined ? [] : [zone],
        ids: [id],
        step,
      })
      continue
    }
    row.ids.push(id)
    if (subject !== undefined && !row.subjects.includes(subject)) row.subjects.push(subject)
    if (zone !== undefined && !row.zones.includes(zone)) row.zones.push(zone)
  }
  return [...rows.values()].map(({ subjects, zones, ids, step }) => ({
    subjects,
    ids,
    step,
    says: sayFor(step, subjects, zones),
  }))
}

/** Rows about the same things together, in the order of the first of each. */
export function groupedRows(rows: readonly CalculationRow[]): CalculationGroup[] {
  const groups = new Map<string, CalculationRow[]>()
  for (const row of rows) {
    const key = JSON.stringify(row.subjects)
    groups.set(key, [...(groups.get(key) ?? []), row])
  }
  return [...groups.values()].map((group) => ({ subjects: group[0]?.subjects ?? [], rows: group }))
}

function sayFor({ says }: Step, subjects: readonly string[], zones: readonly string[]): string {
  const [first] = subjects
  const named = subjects.length < 2 ? says : withoutWord(says, first, 'each').replaceAll('plane each', 'each plane')
  return zones.length < 2 ? named : named.replace(ZONE, `zones ${zones.join(', ')}`)
}

/** A sentence with another word for its subject, or for the last part of it (`b1` of `home.roof.b1`). */
function withoutWord(says: string, subject: string | undefined, word = '*'): string {
  const last = subject?.split('.').at(-1)
  if (last === undefined || last === '') return says
  const escaped = last.replaceAll(/[.*+?^${}()|[\]\\]/gu, String.raw`\$&`)
  return says.replaceAll(new RegExp(String.raw`(?<![\w.-])${escaped}(?![\w-])`, 'gu'), word)
}
