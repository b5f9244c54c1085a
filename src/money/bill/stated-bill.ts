import { addDays, dayOfYear, daysBetween, own, weekdayOf } from '../../values/index.js'
import { StageError } from '../../worksheet/index.js'
import { microKwh, splitMicroKwh } from '../exact/index.js'
import type { RateSheet } from '../tariff/index.js'
import { emptySegment, type BillLedger } from './ledger.js'

/** Energy by period id, kWh, or one total. */
export type StatedKwh = number | Readonly<Record<string, number>>

/** What a printed bill says of its energy. */
export interface StatedEnergy {
  /** Day of the earlier reading, `YYYY-MM-DD`; it is not counted. */
  readonly previousReading: string
  /** Day of the later reading; it is counted. */
  readonly reading: string
  /** Taken from the grid; the whole use where all generation is sold. */
  readonly importKwh: StatedKwh
  readonly exportKwh?: StatedKwh
  readonly generationKwh?: number
  /** kW by id of the demand charge, or one for all. */
  readonly demandKw?: StatedKwh
}

/** Days of one season within a bill, and hours of each period in them. */
interface Span {
  readonly season: number
  days: number
  readonly hours: Float64Array
}

/**
 * The ledger of a printed bill. Where it crosses seasons, the energy of a period is spread evenly over the hours of that
 * period.
 *
 * @throws StageError when the bill does not tell the energy of periods, or the demand, that the tariff prices.
 * @limits Holidays count as the weekdays that they are, where the energy of a period is spread over seasons.
 */
export function statedLedger(sheet: RateSheet, bill: StatedEnergy): BillLedger {
  const { previousReading, reading } = bill
  const days = daysBetween(previousReading, reading)
  if (!(days > 0 && days < 400))
    throw new StageError(
      '',
      `the bill from ${previousReading} to ${reading} has ${days} days`,
      'State the days of two readings, the later one second.',
    )
  const spans = spansOf(sheet, previousReading, days)
  const segments = spans.map((span) => emptySegment(span.season, span.days, sheet.periods.length))
  const put = (kwh: StatedKwh, into: 'imported' | 'exported'): void => {
    for (let p = 0; p < sheet.periods.length; p++) {
      const shares = sharesOf(sheet, spans, kwh, p, into)
      for (const [s, segment] of segments.entries()) segment[into][p] = shares[s] ?? 0
    }
  }
  put(bill.importKwh, 'imported')
  if (bill.exportKwh !== undefined) put(bill.exportKwh, 'exported')
  for (const segment of segments) segment.load.set(segment.imported)
  return {
    month: Number(reading.slice(5, 7)),
    days,
    segments,
    generation: microKwh(bill.generationKwh ?? 0),
    exportedByHour: undefined,
    demandOf: demandOf(sheet, bill),
    hourly: false,
  }
}

function spansOf(sheet: RateSheet, previousReading: string, days: number): Span[] {
  const spans: Span[] = []
  const { partsPerHour, periodOfHour, periods } = sheet
  for (let i = 1; i <= days; i++) {
    const date = addDays(previousReading, i)
    const [year, month, day] = [date.slice(0, 4), date.slice(5, 7), date.slice(8, 10)].map(Number)
    const season = sheet.seasonOfDay[dayOfYear(month ?? 1, day ?? 1)] ?? 0
    let span = spans.find((one) => one.season === season)
    if (span === undefined) spans.push((span = { season, days: 0, hours: new Float64Array(periods.length) }))
    span.days += 1
    const weekday = weekdayOf(year ?? 2000, month ?? 1, day ?? 1)
    const kind = weekday === 0 ? 2 : weekday === 6 ? 1 : 0
    const parts = 24 * partsPerHour
    for (let part = 0; part < parts; part++) {
      const period = periodOfHour[(season * 4 + kind) * parts + part] ?? 0
      span.hours[period] = (span.hours[period] ?? 0) + 1
    }
  }
  return spans
}

/** Energy of one period in each span, millionths of a kWh. */
function sharesOf(
  sheet: RateSheet,
  spans: readonly Span[],
  kwh: StatedKwh,
  period: number,
  into: 'imported' | 'exported',
): number[] {
  const id = sheet.periods[period] ?? ''
  const hours = spans.map((span) => span.hours[period] ?? 0)
  if (typeof kwh === 'number') {
    if (sheet.periods.length > 1 && isPricedByPeriod(sheet, spans, into))
      throw new StageError(
        'tariff.time_of_use',
        'the tariff prices periods, and the bill states only their sum',
        `State the kWh of each period: ${sheet.periods.join(', ')}.`,
      )
    const all = spans.flatMap((span) => [...span.hours])
    const shares = splitMicroKwh(microKwh(kwh), all)
    return spans.map((_, s) => shares[s * sheet.periods.length + period] ?? 0)
  }
  const stated = own(kwh, id)
  if (hours.every((count) => count === 0)) {
    if ((stated ?? 0) === 0) return spans.map(() => 0)
    throw new StageError(
      'tariff.time_of_use',
      `the bill states ${String(stated)} kWh of period ${id}, which has no hours between its readings`,
      'Look at the seasons and rules of the tariff.',
    )
  }
  if (stated === undefined)
    throw new StageError('tariff.time_of_use', `the bill states no kWh of period ${id}`, `Add the kWh of ${id}.`)
  return splitMicroKwh(microKwh(stated), hours)
}

function isPricedByPeriod(sheet: RateSheet, spans: readonly Span[], into: 'imported' | 'exported'): boolean {
  const { solar } = sheet
  if (into === 'exported') return solar.rule !== 'net billing' || solar.prices.kind !== 'monthly'
  return spans.some((span) => sheet.energy[span.season]?.kind !== 'tiers')
}

function demandOf(sheet: RateSheet, { demandKw, reading }: StatedEnergy): ReadonlyMap<string, number> {
  const month = Number(reading.slice(5, 7))
  const found = new Map<string, number>()
  for (const { id, months } of sheet.demand) {
    const kw = typeof demandKw === 'number' ? demandKw : own(demandKw ?? {}, id)
    if (kw !== undefined) found.set(id, microKwh(kw))
    else if (months?.includes(month) !== false)
      throw new StageError(`tariff.demand.${id}`, `the bill states no demand for the charge ${id}`, `State its kW.`)
  }
  return found
}
