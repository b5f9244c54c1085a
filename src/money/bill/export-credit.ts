import { kwhDecimal } from '../exact/index.js'
import type { RateSheet, SolarTerms } from '../tariff/index.js'
import type { BillLedger } from './ledger.js'
import { ZERO, sum, type Decimal } from '../../values/decimal/index.js'

type NetBillingTerms = Extract<SolarTerms, { rule: 'net billing' }>

/** kWh and money that exports (or all generation) earn on one bill. */
export interface Earned {
  readonly id: string
  readonly says: string
  readonly quantity: Decimal
  readonly unit: string
  readonly price: Decimal | undefined
  readonly amount: Decimal
}

/** Imports that are billed, and exports that are paid, by segment and period, under net billing. */
export function splitNetBilling(
  terms: NetBillingTerms,
  ledger: BillLedger,
): { readonly billed: readonly Float64Array[]; readonly paid: readonly Float64Array[] } {
  if (terms.netting !== 'bill') {
    return {
      billed: ledger.segments.map((segment) => segment.imported),
      paid: ledger.segments.map((segment) => segment.exported),
    }
  }
  const net = ledger.segments.map((segment) => segment.imported.map((kwh, p) => kwh - (segment.exported[p] ?? 0)))
  return {
    billed: net.map((periods) => periods.map((kwh) => Math.max(0, kwh))),
    paid: net.map((periods) => periods.map((kwh) => Math.max(0, -kwh))),
  }
}

/** What the exports of a bill earn. */
export function exportEarnings(
  terms: NetBillingTerms,
  sheet: RateSheet,
  ledger: BillLedger,
  paid: readonly Float64Array[],
): Earned[] {
  const { prices } = terms
  if (prices.kind === 'hours') {
    const cells = [...(ledger.exportedByHour ?? [])]
    const amount = sum(
      cells.flatMap((micro, cell) => (micro === 0 ? [] : [kwhDecimal(micro).times(prices.usdPerKwh[cell] ?? ZERO)])),
    )
    const quantity = kwhDecimal(cells.reduce((a, b) => a + b, 0))
    const says = 'exports at the hourly export prices'
    return [{ id: 'export.hours', says, quantity, unit: 'kWh', price: undefined, amount }]
  }
  const byPeriod = sheet.periods.map((_, p) => paid.reduce((all, periods) => all + (periods[p] ?? 0), 0))
  const priced = (id: string, says: string, micro: number, price: Decimal): Earned => {
    const quantity = kwhDecimal(micro)
    return { id, says, quantity, unit: 'kWh', price, amount: quantity.times(price) }
  }
  if (prices.kind === 'monthly') {
    const all = byPeriod.reduce((a, b) => a + b, 0)
    return [priced('export.all', 'exports', all, prices.usdPerKwh[ledger.month - 1] ?? ZERO)]
  }
  return sheet.periods.map((period, p) =>
    priced(`export.${period}`, `exports, ${period}`, byPeriod[p] ?? 0, prices.usdPerKwh[p] ?? ZERO),
  )
}
