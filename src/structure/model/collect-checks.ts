import type { Source, Worksheet } from '../../worksheet/index.js'
import type { CheckValue } from './mount-values.js'

/** A check of one part, before the worst of each name is taken. */
export interface PartCheck {
  readonly name: string
  readonly demand: number
  readonly capacity: number
  /** What `capacity` is, when it is no strength. */
  readonly limitIs?: Exclude<CheckValue['limit_is'], 'capacity'>
  readonly unit: string
  readonly where: string
  readonly source: Source
  /** Path in project.yaml that the person can change. */
  readonly path: string
  readonly fix: string
  /** How bad a failure is; an error when missing. */
  readonly severity?: 'warning'
  /** Document of an engineer that covers it, so that a failure is a note. */
  readonly covered?: string
}

/**
 * The worst part of every check, with a step and, where it fails, a finding; what a document covers and what none covers are told
 * apart.
 *
 * @returns Checks by falling ratio; the first is the weakest link.
 */
export function collectChecks(parts: readonly PartCheck[], worksheet: Worksheet): CheckValue[] {
  const ranked = worstOf(parts, (part) => part.name)
  for (const part of ranked) {
    step(part, worksheet)
    const failing = parts.filter((other) => other.name === part.name && ratioOf(other) > 1)
    for (const worst of worstOf(failing, (other) => other.covered ?? '')) {
      find(worst, failing.filter((other) => other.covered === worst.covered).length, worksheet)
    }
  }
  return ranked.map((part, index) => ({
    name: part.name,
    demand: part.demand,
    capacity: part.capacity,
    unit: part.unit,
    limit_is: part.limitIs ?? 'capacity',
    ratio: ratioOf(part),
    governs: index === 0,
    where: part.where,
  }))
}

/** The part with the highest ratio of each group, by falling ratio. */
function worstOf(parts: readonly PartCheck[], groupOf: (part: PartCheck) => string): PartCheck[] {
  const worst = new Map<string, PartCheck>()
  for (const part of parts) {
    const held = worst.get(groupOf(part))
    if (held === undefined || ratioOf(part) > ratioOf(held)) worst.set(groupOf(part), part)
  }
  return [...worst.values()].toSorted((a, b) => ratioOf(b) - ratioOf(a))
}

function ratioOf(part: PartCheck): number {
  return part.demand / part.capacity
}

const slugOf = (part: PartCheck): string => part.name.replaceAll(' ', '-')

function step(part: PartCheck, worksheet: Worksheet): void {
  const limit = part.limitIs ?? 'capacity'
  worksheet.step({
    id: `structure.check-${slugOf(part)}`,
    says: `Worst ${part.name}: ${part.where}`,
    formula: `demand <= ${limit}`,
    inputs: [{ symbol: limit, value: part.capacity, unit: part.unit, from: part.path }],
    result: { symbol: 'demand', value: part.demand, unit: part.unit },
    check: { relation: '<=', limit: part.capacity, pass: part.demand <= part.capacity },
    source: part.source,
  })
}

function find(part: PartCheck, failing: number, worksheet: Worksheet): void {
  const slug = slugOf(part)
  const others = failing > 1 ? `, and ${failing - 1} more` : ''
  const unit = part.unit === '' ? '' : ` ${part.unit}`
  worksheet.find({
    severity: part.covered === undefined ? (part.severity ?? 'error') : 'note',
    id: `structure.${slug}`,
    message: `${part.name} at ${part.where}${others}: ${number(part.demand)}${unit} is over ${part.limitIs === undefined ? '' : `the ${part.limitIs}, `}${number(part.capacity)}${unit}${part.covered === undefined ? '' : `; covered by ${part.covered}`}`,
    where: part.path,
    source: part.source,
    fix: part.fix,
  })
}

function number(value: number): string {
  return Math.abs(value) >= 10 ? value.toFixed(0) : value.toFixed(2)
}
