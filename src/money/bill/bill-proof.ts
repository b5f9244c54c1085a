import { MONTHS } from '../../values/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { RateSheet } from '../tariff/index.js'
import { toNumber } from './bill-values.js'
import type { BillYear } from './bill-year.js'

/** Records every line of every bill, and its total, on the worksheet. */
export function recordBills(worksheet: Worksheet, sheet: RateSheet, year: BillYear): void {
  const which = year.solar ? 'with' : 'without'
  for (const bill of year.bills) {
    const base = `bill.${which}.${String(bill.ledger.month).padStart(2, '0')}`
    const month = MONTHS[bill.ledger.month - 1] ?? ''
    for (const line of bill.lines) {
      worksheet.step({
        id: `${base}.${line.id}`,
        says: `${month} bill ${which} the system: ${line.says}`,
        formula: 'amount = quantity * price',
        inputs: [
          { symbol: 'quantity', value: toNumber(line.quantity), unit: line.unit, from: 'usage and yield' },
          { symbol: 'price', value: toNumber(line.price), unit: `USD/${line.unit}`, from: 'tariff' },
        ],
        result: { symbol: 'amount', value: toNumber(line.amount), unit: 'USD' },
        source: sheet.source,
      })
    }
    for (const line of bill.earned) {
      const price =
        line.price === undefined
          ? { value: 'by month and hour', unit: '' }
          : { value: toNumber(line.price), unit: `USD/${line.unit}` }
      worksheet.step({
        id: `${base}.earned.${line.id}`,
        says: `${month} credit earned: ${line.says}`,
        formula: 'credit = quantity * price',
        inputs: [
          { symbol: 'quantity', value: toNumber(line.quantity), unit: line.unit, from: 'usage and yield' },
          { symbol: 'price', ...price, from: 'tariff.solar' },
        ],
        result: { symbol: 'credit', value: toNumber(line.amount), unit: 'USD' },
        source: sheet.source,
      })
    }
    worksheet.step({
      id: `${base}.total`,
      says: `${month} bill ${which} the system: sum of its lines, to the cent`,
      formula: sheet.rounding === 'line' ? 'total = sum of the rounded lines' : 'total = round(sum of the lines)',
      inputs: bill.lines.map((line) => ({
        symbol: line.id,
        value: toNumber(line.amount),
        unit: 'USD',
        from: `${base}.${line.id}`,
      })),
      result: { symbol: 'total', value: toNumber(bill.total), unit: 'USD' },
      source: sheet.source,
    })
  }
}

/** Says what the reader must know about how the bills with the system came about. */
export function tellBillLimits(worksheet: Worksheet, sheet: RateSheet, year: BillYear): void {
  const { solar } = sheet
  const hourly = year.bills.some((bill) => bill.ledger.hourly)
  const quarters = year.bills.some((bill) => bill.ledger.quarters === true)
  const nettedByHour = !quarters || (solar.rule === 'net billing' && solar.netting === 'hour')
  for (const assumption of sheet.assumptions) worksheet.assume(assumption)
  const { demandIntervalMin: interval } = sheet
  if (hourly && !quarters && sheet.demand.length > 0 && interval !== undefined && interval < 60) {
    worksheet.find({
      severity: 'warning',
      id: 'bill.demand-interval',
      message: `the utility averages demand over ${String(interval)} minutes, and hourly use understates it: the real demand charge is higher`,
      where: 'tariff.demand_interval_min',
      fix: 'Take the demand of a printed bill as the better figure.',
    })
  }
  if (hourly && nettedByHour && sheet.partsPerHour > 1) {
    worksheet.find({
      severity: 'note',
      id: 'bill.split-hours',
      message: 'periods begin or end within an hour: its use and output are spread evenly over its quarters',
      where: 'tariff.time_of_use',
    })
  }
  if (!year.solar) return
  if (solar.rule === 'unpaid') {
    worksheet.find({
      severity: 'note',
      id: 'bill.exports-unpaid',
      message: 'the tariff states no solar rule, so exported kWh are worth nothing here',
      where: 'tariff.solar',
      fix: 'State net_metering, net_billing or buy_all_sell_all as the utility grants it.',
    })
  }
  const instant = solar.rule === 'net billing' && (solar.netting === 'instant' || solar.netting === '15_min')
  if (hourly && (instant || solar.rule === 'unpaid')) {
    worksheet.find({
      severity: 'note',
      id: 'bill.hourly-netting',
      message: quarters
        ? 'own use is worked out by quarters of an hour from the use, and from output that is even within each hour, which overstates it a little'
        : 'own use is worked out by hours, which overstates it against metering at shorter intervals',
      where: 'tariff.solar',
      source: { document: 'Hourly means hide the spikes of a single home', standing: 'common practice, no source' },
    })
  }
  if (hourly && sheet.demand.length > 0) {
    worksheet.find({
      severity: 'warning',
      id: 'bill.hourly-demand',
      message: `demand is taken from ${quarters ? `means over ${String(interval ?? 60)} minutes of the metered use, and hourly means of the output` : 'hourly means'} of typical days, and one cloudy hour can undo a saving of demand`,
      where: 'tariff.demand',
    })
  }
}
