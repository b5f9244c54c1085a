import { Worksheet, type Result } from '../../worksheet/index.js'
import type { BillingCalendar } from '../calendar/index.js'
import type { RateSheet } from '../tariff/index.js'
import { recordBills, tellBillLimits } from './bill-proof.js'
import { billYearValues, toNumber, type BillYearValues } from './bill-values.js'
import { priceYear } from './bill-year.js'
import { houseLedgers, type HouseEnergy, type HouseLedgers } from './house-energy.js'
import { sum } from '../../values/decimal/index.js'

export interface SavingsValues {
  readonly without: BillYearValues
  readonly with: BillYearValues
  /** Bill without minus bill with the system, January first, USD. */
  readonly monthly_savings_usd: readonly number[]
  readonly annual_savings_usd: number
}

/**
 * Savings of the first year: the bills without the system minus the bills with it, to the cent.
 *
 * @param ledgers Its hours added up, where that is done already.
 * @throws StageError as `computeBill`.
 */
export function computeSavings(
  sheet: RateSheet,
  energy: HouseEnergy,
  calendar: BillingCalendar,
  sheetWithSystem: RateSheet = sheet,
  ledgers: HouseLedgers = houseLedgers(sheet, energy, calendar, sheetWithSystem),
): Result<SavingsValues> {
  const worksheet = new Worksheet()
  const without = priceYear(sheet, ledgers.before.without(), false)
  const withSystem = priceYear(sheetWithSystem, ledgers.after.withSystem(1), true)
  recordBills(worksheet, sheet, without)
  recordBills(worksheet, sheetWithSystem, withSystem)
  tellBillLimits(worksheet, sheetWithSystem, withSystem)
  const saved = without.bills.map((bill, i) => bill.total.minus(withSystem.bills[i]?.total ?? bill.total))
  const values = billYearValues(sheetWithSystem.name, withSystem)
  if (values.lost_kwh > 0 || values.lost_usd > 0 || values.left_kwh > 0 || values.left_usd > 0) {
    worksheet.find({
      severity: 'note',
      id: 'bill.credit-unused',
      message: `in a year ${String(values.lost_kwh)} kWh and ${String(values.lost_usd)} USD of credit are given up unpaid, and ${String(values.left_kwh)} kWh and ${String(values.left_usd)} USD stay in the banks uncounted`,
      where: 'tariff.solar',
      fix: 'Compare a smaller system.',
    })
  }
  worksheet.step({
    id: 'savings.year-1',
    says: 'Savings of the first year: bills without minus bills with the system',
    formula: 'S = B_without - B_with',
    inputs: [
      { symbol: 'B_without', value: toNumber(without.total), unit: 'USD', from: 'bill.without' },
      { symbol: 'B_with', value: toNumber(withSystem.total), unit: 'USD', from: 'bill.with' },
    ],
    result: { symbol: 'S', value: toNumber(sum(saved)), unit: 'USD' },
    source: sheet.source,
  })
  return worksheet.result({
    without: billYearValues(sheet.name, without),
    with: values,
    monthly_savings_usd: saved.map(toNumber),
    annual_savings_usd: toNumber(sum(saved)),
  })
}
