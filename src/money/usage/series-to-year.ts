import { StageError, type Worksheet } from '../../worksheet/index.js'
import { ESPI_SOURCE } from '../../tables/money/index.js'
import { HOURS_PER_YEAR, makeCalendar } from '../calendar/index.js'
import { fillGaps } from './fill-gaps.js'
import { hoursOfSeries, type HourSeries } from './hours-of-series.js'
import type { MeterSeries } from './meter-series.js'
import { quartersOfHour, quartersOfSeries } from './quarters-of-series.js'
import { monthlyTotals, type MeterReport, type UsageYear } from './usage-year.js'
import { MS_PER_HOUR, addDays, dayOfYear, type Seconds } from '../../values/index.js'

const dateOfHour = (hour: number): string => new Date(hour * MS_PER_HOUR).toISOString().slice(0, 10)
const stampOfUtc = (seconds: number): string => `${new Date(seconds * 1000).toISOString().slice(0, 16)}Z`

/** One year earlier, the day after: first day of the year that ends on `last`. */
function firstDateOf(last: string): string {
  const next = addDays(last, 1)
  const year = String(Number(next.slice(0, 4)) - 1)
  return next.slice(5) === '02-29' ? `${year}-03-01` : year + next.slice(4)
}

/** How meter data become a year. */
export interface YearRequest {
  /** Name of the kind of usage for the report. */
  readonly from: 'green_button' | 'interval_csv'
  /** Standard time of the site. */
  readonly utcOffsetS: Seconds
  readonly daylightSaving: boolean
  /** What is done with missing hours. */
  readonly policy: 'refuse' | 'typical_day'
}

/**
 * Lays the latest year of meter data out as 8760 hours of local standard time. 29 February is left out.
 *
 * @throws StageError when the data cover less than a year or have gaps that the policy does not fill.
 */
export function seriesToYear(series: MeterSeries, request: YearRequest, worksheet: Worksheet): UsageYear {
  const { from, daylightSaving } = request
  const hours = hoursOfSeries(series, request.utcOffsetS)
  const count = hours.importWh.length
  // An hour less than a year passes: an export that begins at local midnight in summer does so at 23:00 standard time.
  if (count < HOURS_PER_YEAR - 1) {
    throw new StageError(
      series.where,
      `the data cover ${(count / 24).toFixed(1)} days; a whole year is needed`,
      'Export twelve months or more, or state usage.monthly_kwh with usage.load_shape.',
    )
  }
  const firstDate = firstDateOf(dateOfHour(hours.firstHour + count - 1))
  const calendar = makeCalendar(firstDate, daylightSaving)
  const { usageKwh, sentWh, quarterWh } = latestYear(hours, quartersOfSeries(series, hours, request.utcOffsetS))
  const gaps = fillGaps(usageKwh, calendar, request.policy, series.where)
  const quarterKwh = quarterWh === undefined ? undefined : quartersOf(usageKwh, quarterWh)
  tellLength(worksheet, series.where, hours, firstDate)
  const meter = meterReport(series, gaps, sentWh)
  tellMeter(worksheet, series, meter, gaps)
  const monthly = monthlyTotals(usageKwh, calendar)
  const annual = Math.round(monthly.reduce((a, b) => a + b, 0) * 1e6) / 1e6
  return {
    usageKwh,
    ...(quarterKwh === undefined ? {} : { quarterKwh }),
    calendar,
    values: {
      from,
      load_shape: null,
      first_date: firstDate,
      daylight_saving: daylightSaving,
      annual_kwh: annual,
      monthly_kwh: monthly,
      meter,
    },
  }
}

/** The latest reading of each hour of the year; use that nobody measured is no number. */
function latestYear(
  hours: HourSeries,
  quarters: Float64Array | undefined,
): { usageKwh: Float64Array; sentWh: Float64Array; quarterWh: Float64Array | undefined } {
  const usageKwh = new Float64Array(HOURS_PER_YEAR).fill(Number.NaN)
  const sentWh = new Float64Array(HOURS_PER_YEAR)
  const quarterWh = quarters === undefined ? undefined : new Float64Array(4 * HOURS_PER_YEAR)
  const count = hours.importWh.length
  for (let i = Math.max(0, count - 8784 - 24); i < count; i++) {
    const hour = hours.firstHour + i
    const date = dateOfHour(hour)
    const wh = hours.importWh[i] ?? Number.NaN
    if (date.slice(5) === '02-29' || Number.isNaN(wh)) continue
    const index = dayOfYear(Number(date.slice(5, 7)), Number(date.slice(8, 10))) * 24 + (hour % 24)
    // The loop runs forward, so the latest year overwrites the older hours.
    usageKwh[index] = Math.round(wh * 1000) / 1e6
    sentWh[index] = hours.exportWh[i] ?? 0
    if (quarters !== undefined) quarterWh?.set(quarters.subarray(4 * i, 4 * i + 4), 4 * index)
  }
  return { usageKwh, sentWh, quarterWh }
}

/** Quarters of the hours of a year; an hour that was filled in is even. */
function quartersOf(usageKwh: Float64Array, quarterWh: Float64Array): Float64Array {
  const kwh = new Float64Array(quarterWh.length)
  for (let h = 0; h < usageKwh.length; h++)
    kwh.set(quartersOfHour(usageKwh[h] ?? 0, quarterWh.subarray(4 * h, 4 * h + 4)), 4 * h)
  return kwh
}

/** What a file holds beyond a year is left out, and told. */
function tellLength(worksheet: Worksheet, where: string, { firstHour, importWh }: HourSeries, firstDate: string): void {
  const leap = (hour: number): boolean => dateOfHour(hour).slice(5) === '02-29'
  let beyond = -HOURS_PER_YEAR
  for (let i = 0; i < importWh.length; i++) if (!leap(firstHour + i)) beyond += 1
  if (beyond <= 0) return
  worksheet.find({
    severity: 'note',
    id: 'usage.beyond-a-year',
    message: `the file reaches ${String(beyond)} hours beyond a year: of each hour its latest reading counts, in the year that begins on ${firstDate}`,
    where,
  })
}

function meterReport(series: MeterSeries, gaps: ReturnType<typeof fillGaps>, sentWh: Float64Array): MeterReport {
  return {
    readings: series.readings.length,
    first_reading: stampOfUtc(series.readings[0]?.startS ?? 0),
    last_reading: stampOfUtc(series.readings.at(-1)?.startS ?? 0),
    duplicates_dropped: series.exactDuplicates,
    conflicts_settled: series.conflicts,
    estimated_readings: series.estimated,
    filled_hours: gaps.filledHours,
    longest_gap_hours: gaps.longestGapHours,
    filled_kwh: Number(gaps.filledKwh.toFixed(3)),
    export_kwh: Number((sentWh.reduce((a, b) => a + b, 0) / 1000).toFixed(3)),
  }
}

function tellMeter(
  worksheet: Worksheet,
  series: MeterSeries,
  meter: MeterReport,
  gaps: ReturnType<typeof fillGaps>,
): void {
  const where = series.where
  if (meter.filled_hours > 0) {
    worksheet.find({
      severity: 'warning',
      id: 'usage.gaps-filled',
      message: `${String(meter.filled_hours)} missing hours (longest gap ${String(meter.longest_gap_hours)} h, from ${gaps.longestFrom} standard time) were filled with the mean of the same hour and kind of day of the month, ${String(meter.filled_kwh)} kWh in all`,
      where,
    })
  }
  if (meter.duplicates_dropped > 0) {
    const message = `${String(meter.duplicates_dropped)} readings stood twice with the same value and were counted once`
    worksheet.find({ severity: 'note', id: 'usage.duplicates', message, where })
  }
  if (meter.conflicts_settled > 0) {
    const message = `${String(meter.conflicts_settled)} overlapping readings differed and were settled by usage.overlaps`
    worksheet.find({ severity: 'warning', id: 'usage.overlaps', message, where: 'usage.overlaps' })
  }
  if (meter.estimated_readings > 0) {
    const message = `${String(meter.estimated_readings)} readings are marked as estimated by the utility`
    worksheet.find({ severity: 'note', id: 'usage.estimated', message, where })
  }
  if (meter.export_kwh > 0) {
    worksheet.find({
      severity: 'warning',
      id: 'usage.export-present',
      message: `the meter also shows ${String(meter.export_kwh)} kWh of export, so delivered energy is not the use of the house: use = delivered + generated - exported`,
      where,
      fix: 'Use data from before the existing system, or add its generation to the use.',
    })
  }
  if (series.unstated.includes('accumulation')) {
    worksheet.find({
      severity: 'warning',
      id: 'usage.accumulation-unstated',
      message: 'the file does not say how its values accumulate; each is taken as the energy of its interval',
      where,
      source: ESPI_SOURCE,
      fix: 'Compare the yearly total with the bills.',
    })
  }
  if (series.unstated.includes('flow')) {
    worksheet.find({
      severity: 'warning',
      id: 'usage.flow-unstated',
      message: 'the file does not say which way its energy flows; it is taken as delivered to the house',
      where,
      source: ESPI_SOURCE,
      fix: 'Compare the yearly total with the bills.',
    })
  }
  for (const message of series.leftOut) worksheet.find({ severity: 'note', id: 'usage.left-out', message, where })
}
