import type { ApplicationFacts } from './application-facts.js'
import type { ApplicationField } from './application-values.js'

/** An answer with the key or the result that it comes from. */
export interface Answer {
  readonly value: string | number
  readonly from: string
  /** Whether the answer is that there is nothing to state. */
  readonly none?: boolean
}

/** A field of applications: what it asks, and where a project has the answer. */
export interface FieldRule {
  readonly id: string
  /** Row of the list of what applications ask for, from 1; see APPLICATION_SOURCES.fields. */
  readonly row: number
  readonly section: string
  readonly label: string
  readonly unit?: string
  readonly askedBy: string
  readonly who: string
  /** Key to state it under where it is missing. */
  readonly key: string | ((facts: ApplicationFacts) => string)
  /** undefined: missing; 'blank': left to the hand that signs. */
  readonly of: (facts: ApplicationFacts) => Answer | 'blank' | undefined
  /** Missing: every system is asked. */
  readonly when?: (facts: ApplicationFacts) => boolean
  readonly note?: string | ((facts: ApplicationFacts) => string)
}

/** An answer that stands under a key, undefined where nothing stands. */
export function stated(from: string, value: string | number | boolean | undefined): Answer | undefined {
  if (value === undefined) return undefined
  return { value: typeof value === 'boolean' ? (value ? 'yes' : 'no') : value, from }
}

/** The fields that a system is asked, answered. */
export function answerFields(rules: readonly FieldRule[], facts: ApplicationFacts): ApplicationField[] {
  return rules.filter(({ when }) => when?.(facts) ?? true).map((rule) => answerField(rule, facts))
}

function answerField(rule: FieldRule, facts: ApplicationFacts): ApplicationField {
  const answer = rule.of(facts)
  const isBlank = answer === 'blank'
  const found = isBlank ? undefined : answer
  const key = typeof rule.key === 'function' ? rule.key(facts) : rule.key
  return {
    id: rule.id,
    section: rule.section,
    label: rule.label,
    state: isBlank ? 'blank' : found === undefined ? 'missing' : found.none === true ? 'none' : 'stated',
    value: found?.value ?? null,
    unit: typeof found?.value === 'number' ? (rule.unit ?? '') : '',
    from: found?.from ?? '',
    missing: isBlank || found !== undefined ? null : key,
    supplied_by: rule.who,
    asked_by: rule.askedBy,
    note: (typeof rule.note === 'function' ? rule.note(facts) : rule.note) ?? '',
  }
}
