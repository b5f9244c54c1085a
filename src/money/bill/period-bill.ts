import { StageError } from '../../worksheet/index.js'
import { microKwh } from '../exact/index.js'
import type { RateSheet } from '../tariff/index.js'
import { dayOfYear, own } from '../../values/index.js'
import { billValues, type BillValues } from './bill-values.js'
import { emptySegment, type BillLedger } from './ledger.js'
import { noBanks, priceBill } from './price-bill.js'

/**
 * One bill from the energy of each time-of-use period, such as a printed bill shows it.
 *
 * @param month Month of the bill, 1 to 12, which tells the season by its first day.
 * @param usageKwh kWh by period id; `all` when the tariff has no periods.
 * @param demandKw kW by id of the demand charge.
 * @throws StageError when a period or the demand of a charge is missing.
 */
export function billFromPeriods(
  sheet: RateSheet,
  month: number,
  days: number,
  usageKwh: Readonly<Record<string, number>>,
  demandKw: Readonly<Record<string, number>> = {},
): BillValues {
  const firstDay = dayOfYear(month, 1)
  const demandOf = new Map<string, number>()
  for (const { id } of sheet.demand) {
    const kw = own(demandKw, id)
    if (kw === undefined) {
      throw new StageError(
        'tariff.demand',
        `energy by period does not tell the demand of ${id}`,
        `State the kW of ${id}, or use hourly use for this tariff.`,
      )
    }
    demandOf.set(id, microKwh(kw))
  }
  const segment = emptySegment(sheet.seasonOfDay[firstDay] ?? 0, days, sheet.periods.length)
  for (const [p, period] of sheet.periods.entries()) {
    const kwh = own(usageKwh, period)
    if (kwh === undefined)
      throw new StageError('usage', `there is no energy for period ${period}`, `State the kWh of ${period}.`)
    segment.load[p] = microKwh(kwh)
    segment.imported[p] = microKwh(kwh)
  }
  const ledger: BillLedger = {
    month,
    days,
    segments: [segment],
    generation: 0,
    exportedByHour: undefined,
    demandOf,
    hourly: false,
  }
  return billValues(priceBill(sheet, ledger, false, noBanks(sheet)))
}
