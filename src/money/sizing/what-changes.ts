import type { BillYearValues } from '../bill/index.js'

/** How one kind of bill line changes over a year between two systems. */
export interface LineChange {
  /** Id of the bill line: `energy.summer.tier_2`, `credit.used`, `export.off_peak`. */
  readonly id: string
  readonly says: string
  readonly unit: string
  /** Larger system minus smaller one. */
  readonly quantity: number
  readonly amount_usd: number
}

interface Total {
  says: string
  unit: string
  quantity: number
  amount: number
}

function totals(year: BillYearValues): Map<string, Total> {
  const byId = new Map<string, Total>()
  for (const line of year.bills.flatMap((bill) => [...bill.lines, ...bill.earned])) {
    const total = byId.get(line.id) ?? { says: line.says, unit: line.unit, quantity: 0, amount: 0 }
    total.quantity += line.quantity
    total.amount += line.amount_usd
    byId.set(line.id, total)
  }
  return byId
}

/**
 * What further output replaces: the bill lines that differ over the year, largest first. Lines `export.*` are credit that
 * is earned; what of it is used stands in `credit.used`.
 */
export function whatChanges(smaller: BillYearValues, larger: BillYearValues): LineChange[] {
  const before = totals(smaller)
  const after = totals(larger)
  const changes = [...new Set([...before.keys(), ...after.keys()])].map((id): LineChange => {
    const a = before.get(id)
    const b = after.get(id)
    return {
      id,
      says: b?.says ?? a?.says ?? id,
      unit: b?.unit ?? a?.unit ?? '',
      quantity: Number(((b?.quantity ?? 0) - (a?.quantity ?? 0)).toFixed(6)),
      amount_usd: Number(((b?.amount ?? 0) - (a?.amount ?? 0)).toFixed(6)),
    }
  })
  return changes
    .filter((change) => change.quantity !== 0 || change.amount_usd !== 0)
    .sort((a, b) => Math.abs(b.amount_usd) - Math.abs(a.amount_usd))
}
