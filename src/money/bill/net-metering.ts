import type { BillLedger } from './ledger.js'

/** Energy of a bill after netting and the bank, in whole millionths of a kWh. */
export interface NettedEnergy {
  /** By segment and period. */
  readonly billed: readonly Float64Array[]
  /** Left over, by period. */
  readonly bank: Float64Array
}

/** Subtracts what a pool holds from the positive entries of one period; returns what is left in the pool. */
function draw(pool: number, net: readonly Float64Array[], period: number): number {
  let left = pool
  for (const segment of net) {
    const due = segment[period] ?? 0
    if (due <= 0 || left <= 0) continue
    const taken = Math.min(due, left)
    segment[period] = due - taken
    left -= taken
  }
  return left
}

/**
 * Nets export against import over the bill: first within the period, with the bank of earlier bills, then, where the
 * tariff lets it, across periods in their order.
 *
 * @param bank Banked kWh by period from earlier bills, millionths of a kWh.
 */
export function netOverBill(ledger: BillLedger, bank: Float64Array, acrossPeriods: boolean): NettedEnergy {
  const billed = ledger.segments.map((segment) => segment.imported.map((kwh, p) => kwh - (segment.exported[p] ?? 0)))
  const left = bank.slice()
  for (let p = 0; p < left.length; p++) {
    for (const segment of billed) {
      const net = segment[p] ?? 0
      if (net >= 0) continue
      left[p] = (left[p] ?? 0) - net
      segment[p] = 0
    }
    left[p] = draw(left[p] ?? 0, billed, p)
  }
  if (acrossPeriods) {
    for (let from = 0; from < left.length; from++) {
      for (let to = 0; to < left.length; to++) left[from] = draw(left[from] ?? 0, billed, to)
    }
  }
  return { billed, bank: left }
}
