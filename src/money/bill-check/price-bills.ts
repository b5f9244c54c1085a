import { addDays, daysBetween } from '../../values/index.js'
import { ZERO, toCents, type Decimal } from '../../values/decimal/index.js'
import { noBanks, priceBill, statedLedger, type Bill, type BillLedger, type StatedEnergy } from '../bill/index.js'
import type { RateSheet } from '../tariff/index.js'
import type { DayCount, PaidBill, StatedLine } from './paid-bill.js'

/** Printed bills, and how they are to be worked out. */
export interface BillSet {
  readonly bills: readonly PaidBill[]
  readonly days: DayCount
  /** Whether the rules for solar customers hold. */
  readonly solar: boolean
}

/** Whether both printed days count, as the next bill begins the day after, or one day is the end of one and the start of the next. */
export function dayCountOf(bills: readonly PaidBill[]): DayCount | undefined {
  const steps = new Set<number>()
  for (const [i, bill] of bills.entries()) {
    const next = bills[i + 1]
    if (next !== undefined) steps.add(daysBetween(bill.to, next.from))
  }
  if (steps.has(0)) return 'last'
  return steps.has(1) ? 'both' : undefined
}

/** Works out one bill after the other, as banks go from each to the next. */
export function* priceBills(sheet: RateSheet, set: BillSet): Generator<Bill> {
  let banks = noBanks(sheet)
  for (const bill of set.bills) {
    const priced = priceBill(sheet, ledgerOf(sheet, set, bill), set.solar, banks)
    banks = priced.banks
    yield priced
  }
}

/** One bill by itself, without what earlier ones left. */
export function priceAlone(sheet: RateSheet, set: BillSet, bill: PaidBill): Bill {
  return priceBill(sheet, ledgerOf(sheet, set, bill), set.solar, noBanks(sheet))
}

/** Ledgers by what of a tariff they follow from, as a search changes mostly prices. */
const ledgers = new WeakMap<PaidBill, Map<string, BillLedger>>()

/** What of a tariff a ledger follows from, worked out once for each sheet. */
const keys = new WeakMap<RateSheet, string>()

function keyOf(sheet: RateSheet): string {
  const held = keys.get(sheet)
  if (held !== undefined) return held
  const { seasonOfDay, periodOfHour, periods, demand, energy, solar } = sheet
  const charges = demand.map(({ id, months = [] }) => [id, ...months])
  const kinds = [energy.map(({ kind }) => kind), solar.rule === 'net billing' ? solar.prices.kind : solar.rule]
  const key = JSON.stringify([seasonOfDay.join(''), periodOfHour.join(), periods, charges, kinds])
  keys.set(sheet, key)
  return key
}

function ledgerOf(sheet: RateSheet, { days }: BillSet, bill: PaidBill): BillLedger {
  const key = `${days} ${keyOf(sheet)}`
  const own = ledgers.get(bill) ?? new Map<string, BillLedger>()
  const held = own.get(key)
  if (held !== undefined) return held
  const ledger = statedLedger(sheet, energyOf(bill, days))
  ledgers.set(bill, own.set(key, ledger))
  return ledger
}

function energyOf(bill: PaidBill, days: DayCount): StatedEnergy {
  const { importKwh, exportKwh, generationKwh, demandKw } = bill
  return {
    previousReading: days === 'both' ? addDays(bill.from, -1) : bill.from,
    reading: bill.to,
    importKwh,
    ...(exportKwh === undefined ? {} : { exportKwh }),
    ...(generationKwh === undefined ? {} : { generationKwh }),
    ...(demandKw === undefined ? {} : { demandKw }),
  }
}

/** What a worked-out bill says of a group of its lines, USD to the cent. */
export function lineTotal(bill: Bill, group: StatedLine): Decimal {
  return toCents(bill.lines.reduce((all, line) => (line.group === group ? all.plus(line.amount) : all), ZERO))
}

const CENT = 0.01

/** Whether a worked-out bill is the printed one: total to the cent, and each stated line (to a cent where only totals are rounded). */
export function isSame(bill: Bill, paid: PaidBill, rounding: RateSheet['rounding']): boolean {
  if (!bill.total.eq(paid.amountUsd)) return false
  const slack = rounding === 'line' ? 0 : CENT
  return [...paid.lines].every(([group, usd]) => Math.abs(lineTotal(bill, group).minus(usd).toNumber()) <= slack + 1e-9)
}
