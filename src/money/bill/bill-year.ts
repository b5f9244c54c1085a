import type { RateSheet } from '../tariff/index.js'
import type { BillLedger } from './ledger.js'
import { noBanks, priceBill, type Bill } from './price-bill.js'
import { sum, type Decimal } from '../../values/decimal/index.js'

/** Twelve bills, January first. */
export interface BillYear {
  readonly solar: boolean
  readonly bills: readonly Bill[]
  readonly total: Decimal
  /** Month (1 to 12) of the first bill that was worked out, with empty banks. */
  readonly firstMonth: number
}

/** First month after the true-up, so that one credit year runs from empty banks to its settlement. */
export function firstMonthOf(sheet: RateSheet): number {
  const { solar } = sheet
  if (solar.rule === 'unpaid') return 1
  const credit = solar.credit
  const trueUp =
    solar.rule === 'net metering' && solar.bank !== 'money' ? solar.trueUpMonth : (credit?.trueUpMonth ?? 12)
  return (trueUp % 12) + 1
}

/** Prices a year of bills, carrying the banks of kWh and of money from each to the next. */
export function priceYear(sheet: RateSheet, ledgers: readonly BillLedger[], solar: boolean): BillYear {
  const firstMonth = solar ? firstMonthOf(sheet) : 1
  const bills: Bill[] = []
  let banks = noBanks(sheet)
  for (let i = 0; i < 12; i++) {
    const month = ((firstMonth - 1 + i) % 12) + 1
    const ledger = ledgers.find((one) => one.month === month)
    if (ledger === undefined) continue
    const bill = priceBill(sheet, ledger, solar, banks)
    banks = bill.banks
    bills.push(bill)
  }
  bills.sort((a, b) => a.ledger.month - b.ledger.month)
  return { solar, bills, total: sum(bills.map((bill) => bill.total)), firstMonth }
}

/** The bill after which no other was worked out: what its banks hold is left at the end of the year. */
export function lastBill(year: BillYear): Bill | undefined {
  const last = ((year.firstMonth + 10) % 12) + 1
  return year.bills.find((bill) => bill.ledger.month === last)
}
