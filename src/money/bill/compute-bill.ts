import { Worksheet, type Result } from '../../worksheet/index.js'
import type { BillingCalendar } from '../calendar/index.js'
import { recordBills, tellBillLimits } from './bill-proof.js'
import { billYearValues, type BillYearValues } from './bill-values.js'
import { priceYear } from './bill-year.js'
import { yearLedgers, type HouseEnergy } from './house-energy.js'
import type { RateSheet } from '../tariff/index.js'

/**
 * A year of bills under a tariff, line by line, in exact decimal arithmetic.
 *
 * @param energy Use and, if there is a system, its output; with output the solar customer's rules apply.
 * @returns Twelve bills, January first, USD.
 * @throws StageError when months or hours are missing or the tariff needs hours that monthly totals do not tell.
 */
export function computeBill(sheet: RateSheet, energy: HouseEnergy, calendar: BillingCalendar): Result<BillYearValues> {
  const worksheet = new Worksheet()
  const solar = energy.productionKwh !== undefined
  const ledgers = yearLedgers(sheet, energy, calendar)
  const year = priceYear(sheet, solar ? ledgers.withSystem(1) : ledgers.without(), solar)
  recordBills(worksheet, sheet, year)
  tellBillLimits(worksheet, sheet, year)
  return worksheet.result(billYearValues(sheet.name, year))
}

/** The same year of bills without its proof, for callers that compare many. @throws StageError as `computeBill`. */
export function billYearOf(sheet: RateSheet, energy: HouseEnergy, calendar: BillingCalendar): BillYearValues {
  const solar = energy.productionKwh !== undefined
  const ledgers = yearLedgers(sheet, energy, calendar)
  return billYearValues(sheet.name, priceYear(sheet, solar ? ledgers.withSystem(1) : ledgers.without(), solar))
}
