import type { Source, Worksheet } from '../worksheet/index.js'
import type { CheckValue } from './mount-values.js'

/** A check of one part, before the worst of each name is taken. */
export interface PartCheck {
  readonly name: string
  readonly demand: number
  readonly capacity: number
  readonly unit: string
  readonly where: string
  readonly source: Source
  /** Path in project.yaml that the person can change. */
  readonly path: string
  readonly fix: string
  /** Reported as a note because an engineer's letter covers it. */
  readonly covered?: string
}

/**
 * The worst part of every check, with a step and, where it fails, a finding.
 *
 * @returns Checks by falling ratio; the first is the weakest link.
 */
export function collectChecks(parts: readonly PartCheck[], worksheet: Worksheet): CheckValue[] {
  const worst = new Map<string, { part: PartCheck; failing: number }>()
  for (const part of parts) {
    const held = worst.get(part.name)
    const failing = (held?.failing ?? 0) + (ratioOf(part) > 1 ? 1 : 0)
    worst.set(part.name, {
      part: held === undefined || ratioOf(part) > ratioOf(held.part) ? part : held.part,
      failing,
    })
  }
  const ranked = [...worst.values()].toSorted((a, b) => ratioOf(b.part) - ratioOf(a.part))
  for (const { part, failing } of ranked) report(part, failing, worksheet)
  return ranked.map(({ part }, index) => ({
    name: part.name,
    demand: part.demand,
    capacity: part.capacity,
    unit: part.unit,
    ratio: ratioOf(part),
    governs: index === 0,
    where: part.where,
  }))
}

function ratioOf(part: PartCheck): number {
  return part.demand / part.capacity
}

function report(part: PartCheck, failing: number, worksheet: Worksheet): void {
  const slug = part.name.replaceAll(' ', '-')
  const pass = part.demand <= part.capacity
  worksheet.step({
    id: `structure.check.${slug}`,
    says: `Worst ${part.name}: ${part.where}`,
    formula: 'demand <= capacity',
    inputs: [{ symbol: 'capacity', value: part.capacity, unit: part.unit, from: part.path }],
    result: { symbol: 'demand', value: part.demand, unit: part.unit },
    check: { relation: '<=', limit: part.capacity, pass },
    source: part.source,
  })
  if (pass) return
  const others = failing > 1 ? `, and ${failing - 1} more` : ''
  const unit = part.unit === '' ? '' : ` ${part.unit}`
  worksheet.find({
    severity: part.covered === undefined ? 'error' : 'note',
    id: `structure.${slug}`,
    message: `${part.name} at ${part.where}${others}: ${number(part.demand)}${unit} is over ${number(part.capacity)}${unit}${part.covered === undefined ? '' : `; covered by ${part.covered}`}`,
    where: part.path,
    source: part.source,
    fix: part.fix,
  })
}

function number(value: number): string {
  return Math.abs(value) >= 10 ? value.toFixed(0) : value.toFixed(2)
}
