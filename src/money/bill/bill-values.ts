import { kwhDecimal } from '../exact/index.js'
import { lastBill, type BillYear } from './bill-year.js'
import type { BillSegment } from './ledger.js'
import type { Bill } from './price-bill.js'
import type { Decimal } from '../../values/decimal/index.js'
import type { KilowattHours } from '../../values/index.js'

/** A line of a bill as it is reported. */
export interface BillLineValues {
  readonly id: string
  readonly says: string
  readonly quantity: number
  readonly unit: string
  /** USD per unit; left out where every hour has its own price. */
  readonly price_usd?: number
  readonly amount_usd: number
}

export interface BillValues {
  readonly month: number
  readonly days: number
  readonly usage_kwh: number
  readonly generation_kwh: number
  /** Netted within each hour; within the bill where only monthly totals are known. */
  readonly import_kwh: number
  readonly export_kwh: number
  readonly lines: readonly (BillLineValues & { readonly group: string })[]
  /** Credit earned on this bill; `credit.used` among the lines says what of it and of the bank was used. */
  readonly earned: readonly BillLineValues[]
  readonly total_usd: number
  /** Left after this bill. */
  readonly bank_kwh: number
  readonly bank_usd: number
}

export interface BillYearValues {
  readonly tariff: string
  readonly with_system: boolean
  readonly bills: readonly BillValues[]
  readonly total_usd: number
  readonly usage_kwh: number
  readonly generation_kwh: number
  readonly import_kwh: number
  readonly export_kwh: number
  /** Given up at settlements without payment. */
  readonly lost_kwh: number
  readonly lost_usd: number
  /** In the banks at the end of the year; not counted as a saving of this year. */
  readonly left_kwh: number
  readonly left_usd: number
}

export const toNumber = (amount: Decimal): number => amount.toNumber()

function energyOf(bill: Bill, pick: (segment: BillSegment) => Float64Array): number {
  return bill.ledger.segments.reduce((all, segment) => all + pick(segment).reduce((a, b) => a + b, 0), 0)
}

const kwh = (micro: number): KilowattHours => toNumber(kwhDecimal(micro))

export function billValues(bill: Bill): BillValues {
  return {
    month: bill.ledger.month,
    days: bill.ledger.days,
    usage_kwh: kwh(energyOf(bill, (segment) => segment.load)),
    generation_kwh: kwh(bill.ledger.generation),
    import_kwh: kwh(energyOf(bill, (segment) => segment.imported)),
    export_kwh: kwh(energyOf(bill, (segment) => segment.exported)),
    lines: bill.lines.map(({ id, group, says, quantity, unit, price, amount }) => ({
      id,
      group,
      says,
      quantity: toNumber(quantity),
      unit,
      price_usd: toNumber(price),
      amount_usd: toNumber(amount),
    })),
    earned: bill.earned.map(({ id, says, quantity, unit, price, amount }) => ({
      id,
      says,
      quantity: toNumber(quantity),
      unit,
      ...(price === undefined ? {} : { price_usd: toNumber(price) }),
      amount_usd: toNumber(amount),
    })),
    total_usd: toNumber(bill.total),
    bank_kwh: kwh(bill.banks.kwhMicro.reduce((a, b) => a + b, 0)),
    bank_usd: toNumber(bill.banks.usd),
  }
}

export function billYearValues(tariff: string, year: BillYear): BillYearValues {
  const bills = year.bills.map(billValues)
  const micro = (pick: (segment: BillSegment) => Float64Array): number =>
    kwh(year.bills.reduce((all, bill) => all + energyOf(bill, pick), 0))
  const last = lastBill(year)
  return {
    tariff,
    with_system: year.solar,
    bills,
    total_usd: toNumber(year.total),
    usage_kwh: micro((segment) => segment.load),
    generation_kwh: kwh(year.bills.reduce((all, bill) => all + bill.ledger.generation, 0)),
    import_kwh: micro((segment) => segment.imported),
    export_kwh: micro((segment) => segment.exported),
    lost_kwh: kwh(year.bills.reduce((all, bill) => all + bill.lostKwhMicro, 0)),
    lost_usd: toNumber(year.bills.reduce((all, bill) => all.plus(bill.lostUsd), kwhDecimal(0))),
    left_kwh: kwh(last?.banks.kwhMicro.reduce((a, b) => a + b, 0) ?? 0),
    left_usd: last === undefined ? 0 : toNumber(last.banks.usd),
  }
}
