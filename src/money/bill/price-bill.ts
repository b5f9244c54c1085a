import { kwhDecimal } from '../exact/index.js'
import type { MoneyCreditTerms, RateSheet, SolarTerms } from '../tariff/index.js'
import { BillLines, type BillLine } from './bill-lines.js'
import { applyCredit, type CreditOutcome } from './credits.js'
import { addEnergyLines } from './energy-lines.js'
import { exportEarnings, splitNetBilling, type Earned } from './export-credit.js'
import { addDemandLines, addFixedLines, addMinimumLine } from './fixed-lines.js'
import type { BillLedger } from './ledger.js'
import { netOverBill } from './net-metering.js'
import { moveSurplusToCredit, settleKwh } from './settle-surplus.js'
import { addTaxLines } from './tax-lines.js'
import { ZERO, sum, toCents, type Decimal } from '../../values/decimal/index.js'

/** What is carried from one bill to the next. */
export interface Banks {
  /** By period, whole millionths of a kWh. */
  readonly kwhMicro: Float64Array
  readonly usd: Decimal
}

/** One priced bill. */
export interface Bill {
  readonly ledger: BillLedger
  readonly lines: readonly BillLine[]
  /** Credit that exports or generation earned on this bill; used on this or a later one. */
  readonly earned: readonly Earned[]
  /** To be paid, to the cent; below zero when the utility pays. */
  readonly total: Decimal
  readonly banks: Banks
  /** kWh and credit that were given up on this bill without payment. */
  readonly lostKwhMicro: number
  readonly lostUsd: Decimal
}

export function noBanks(sheet: RateSheet): Banks {
  return { kwhMicro: new Float64Array(sheet.periods.length), usd: ZERO }
}

/** Energy that retail prices apply to, and what solar rules make of the rest. */
interface Netted {
  readonly billed: readonly Float64Array[]
  readonly earned: readonly Earned[]
  readonly bankMicro: Float64Array
  readonly credit: MoneyCreditTerms | undefined
}

/**
 * Prices one bill: netting, kWh bank, energy, riders, demand, fixed, minimum, credit in money, taxes, rounding.
 *
 * @param solar Whether the solar customer's charges and rules apply.
 * @param before Banks that earlier bills left.
 */
export function priceBill(sheet: RateSheet, ledger: BillLedger, solar: boolean, before: Banks): Bill {
  const lines = new BillLines(sheet.rounding)
  const terms: SolarTerms = solar ? sheet.solar : { rule: 'unpaid' }
  const netted = netEnergy(terms, sheet, ledger, before)
  const sellsAll = terms.rule === 'buy all, sell all'
  const gridImport = ledger.segments.map((segment) => total(sellsAll ? segment.load : segment.imported))
  addEnergyLines(lines, sheet, ledger, netted.billed, gridImport)
  const surplus = terms.rule === 'net metering' && terms.bank === 'money' ? moveSurplusToCredit(lines) : ZERO
  addDemandLines(lines, sheet, ledger, sellsAll)
  addFixedLines(lines, (solar ? sheet.solarFixed : undefined) ?? sheet.fixed, ledger.days)
  const floor = addMinimumLine(lines, sheet, ledger.days)
  const earnedUsd = sum(netted.earned.map((line) => line.amount)).plus(surplus)
  const available = before.usd.plus(sheet.rounding === 'line' ? toCents(earnedUsd) : earnedUsd)
  const outcome: CreditOutcome =
    netted.credit === undefined
      ? { used: ZERO, bank: before.usd, paidOut: ZERO, lost: ZERO }
      : applyCredit(lines, netted.credit, available, floor, sheet.minimum?.of ?? 'bill', ledger.month)
  const settled = settleKwh(lines, terms, netted.bankMicro, ledger.month)
  addTaxLines(
    lines,
    sheet,
    netted.billed.reduce((all, periods) => all + total(periods), 0),
  )
  return {
    ledger,
    lines: lines.lines,
    earned: netted.earned,
    total: lines.payable(),
    banks: { kwhMicro: settled.bankMicro, usd: outcome.bank },
    lostKwhMicro: settled.lostMicro,
    lostUsd: outcome.lost,
  }
}

function total(periods: Float64Array): number {
  return periods.reduce((a, b) => a + b, 0)
}

function netEnergy(terms: SolarTerms, sheet: RateSheet, ledger: BillLedger, before: Banks): Netted {
  const bankMicro = before.kwhMicro
  switch (terms.rule) {
    case 'unpaid':
      return { billed: ledger.segments.map((s) => s.imported), earned: [], bankMicro, credit: undefined }
    case 'net metering': {
      if (terms.bank === 'money') {
        const billed = ledger.segments.map((s) => s.imported.map((kwh, p) => kwh - (s.exported[p] ?? 0)))
        return { billed, earned: [], bankMicro, credit: terms.credit }
      }
      const { billed, bank } = netOverBill(ledger, bankMicro, terms.bank === 'any_period')
      return { billed, earned: [], bankMicro: bank, credit: undefined }
    }
    case 'net billing': {
      const { billed, paid } = splitNetBilling(terms, ledger)
      return { billed, earned: exportEarnings(terms, sheet, ledger, paid), bankMicro, credit: terms.credit }
    }
    case 'buy all, sell all': {
      const quantity = kwhDecimal(ledger.generation)
      const amount = quantity.times(terms.usdPerKwh)
      const earned = {
        id: 'export.generation',
        says: 'all generation',
        quantity,
        unit: 'kWh',
        price: terms.usdPerKwh,
        amount,
      }
      return { billed: ledger.segments.map((s) => s.load), earned: [earned], bankMicro, credit: terms.credit }
    }
  }
}
