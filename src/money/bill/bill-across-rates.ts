import { StageError, Worksheet, type Result } from '../../worksheet/index.js'
import { kwhDecimal, microKwh, splitMicroKwh } from '../exact/index.js'
import type { EnergyPrices, RateSheet, Tier } from '../tariff/index.js'
import { toNumber } from './bill-values.js'
import { emptySegment, type BillLedger } from './ledger.js'
import { noBanks, priceBill, type Bill } from './price-bill.js'
import { ZERO, sum, toCents } from '../../values/decimal/index.js'
import { addDays, dayOfYear, daysBetween, type KilowattHours } from '../../values/index.js'

/** A sheet and the first day on which it holds, `YYYY-MM-DD`. */
export interface DatedSheet {
  readonly from: string
  readonly sheet: RateSheet
}

export interface ProratedBillValues {
  readonly parts: readonly {
    readonly from: string
    readonly days: number
    readonly kwh: KilowattHours
    readonly total_usd: number
  }[]
  readonly total_usd: number
}

/** Days of a bill under one sheet, with the season of each. */
interface Part {
  readonly from: string
  readonly sheet: RateSheet
  readonly days: { readonly season: number; count: number }[]
}

/**
 * One bill between two readings across changes of rates and seasons, with even daily use.
 *
 * @param previousReading Day of the earlier reading, `YYYY-MM-DD`; it is not counted.
 * @param reading Day of the later reading; it is counted.
 * @returns Total in USD to the cent, from unrounded parts where the tariff rounds totals.
 * @throws StageError when no sheet holds on the first day, the dates are in the wrong order, hours would be needed, or a
 * charge per month would have to be divided.
 * @source Seattle City Light, Questions about residential billing procedures, 1 January 2012
 */
export function billAcrossRates(
  sheets: readonly DatedSheet[],
  previousReading: string,
  reading: string,
  kwh: KilowattHours,
): Result<ProratedBillValues> {
  const worksheet = new Worksheet()
  const days = daysBetween(previousReading, reading)
  if (!(days > 0)) {
    throw new StageError(
      'usage',
      `the bill from ${previousReading} to ${reading} has no days`,
      'State the later reading second.',
    )
  }
  const parts = splitDays(sheets, previousReading, days)
  if (parts.length > 1) for (const part of parts) refuseMonthlyTerms(part.sheet)
  const partDays = parts.map((part) => part.days.reduce((all, span) => all + span.count, 0))
  const shares = splitMicroKwh(microKwh(kwh), partDays)
  const bills = parts.map((part, i) => pricePart(part, shares[i] ?? 0, partDays[i] ?? 0))
  const exact = sum(bills.flatMap((bill) => bill.lines.map((line) => line.amount)))
  const total = toNumber(toCents(exact))
  worksheet.step({
    id: 'bill.across-rates',
    says: 'Bill across a change of rates: the parts, by days with even daily use',
    formula: 'total = round(sum of the lines of all parts)',
    inputs: bills.map((bill, i) => ({
      symbol: `part ${String(i + 1)}`,
      value: toNumber(bill.lines.reduce((all, line) => all.plus(line.amount), ZERO)),
      unit: 'USD',
      from: `tariff from ${parts[i]?.from ?? ''}`,
    })),
    result: { symbol: 'total', value: total, unit: 'USD' },
    source: parts[0]?.sheet.source ?? { document: 'tariff', standing: 'project file' },
  })
  return worksheet.result({
    parts: bills.map((bill, i) => ({
      from: parts[i]?.from ?? '',
      days: partDays[i] ?? 0,
      kwh: toNumber(kwhDecimal(shares[i] ?? 0)),
      total_usd: toNumber(bill.total),
    })),
    total_usd: total,
  })
}

const tiersOf = (prices: EnergyPrices): readonly Tier[] =>
  prices.kind === 'tiers' ? prices.tiers : prices.kind === 'period tiers' ? prices.ladders.flat() : []

/** A charge or threshold per bill cannot be divided over the parts of a bill. */
function refuseMonthlyTerms(sheet: RateSheet): void {
  const perMonth =
    sheet.fixed.some((charge) => charge.per === 'month') ||
    sheet.minimum?.per === 'month' ||
    sheet.tierAdders.some((adder) => adder.above.per === 'month') ||
    sheet.energy.some((one) => tiersOf(one).some((tier) => tier.upTo?.per === 'month'))
  if (!perMonth) return
  throw new StageError(
    'tariff',
    'rates change within the bill, and charges or tiers per month cannot be divided over its parts',
    'State them per day, or with prorate_by_days, as the rate sheet prorates them.',
  )
}

function splitDays(sheets: readonly DatedSheet[], previousReading: string, days: number): Part[] {
  const parts: Part[] = []
  for (let i = 1; i <= days; i++) {
    const date = addDays(previousReading, i)
    const dated = sheets
      .filter((one) => one.from <= date)
      .reduce<DatedSheet | undefined>((a, b) => (a !== undefined && a.from > b.from ? a : b), undefined)
    if (dated === undefined) {
      throw new StageError('tariff', `no tariff holds on ${date}`, 'Add the rate sheet that was in force on that day.')
    }
    const season = dated.sheet.seasonOfDay[dayOfYear(Number(date.slice(5, 7)), Number(date.slice(8, 10)))] ?? 0
    let part = parts.at(-1)
    if (part?.sheet !== dated.sheet) parts.push((part = { from: date, sheet: dated.sheet, days: [] }))
    const span = part.days.at(-1)
    if (span?.season === season) span.count += 1
    else part.days.push({ season, count: 1 })
  }
  return parts
}

function pricePart(part: Part, micro: number, days: number): Bill {
  const { sheet } = part
  if (sheet.periods.length > 1 || sheet.demand.length > 0) {
    throw new StageError(
      'tariff',
      'a bill by days cannot have time-of-use periods or demand charges',
      'Use a meter export, which tells the hours.',
    )
  }
  const loads = splitMicroKwh(
    micro,
    part.days.map((span) => span.count),
  )
  const segments = part.days.map((span, i) => {
    const segment = emptySegment(span.season, span.count, 1)
    segment.load[0] = loads[i] ?? 0
    segment.imported[0] = loads[i] ?? 0
    return segment
  })
  const month = Number(part.from.slice(5, 7))
  const ledger: BillLedger = { month, days, segments, generation: 0, exportedByHour: undefined, hourly: false }
  return priceBill(sheet, ledger, false, noBanks(sheet))
}
