import type { Usage } from '../../project/index.js'
import { StageError, Worksheet, type Result } from '../../worksheet/index.js'
import { makeCalendar } from '../calendar/index.js'
import { chooseShape } from './default-shape.js'
import type { MeterSeries } from './meter-series.js'
import { checkUse } from './plausible-use.js'
import { readGreenButton } from './read-green-button.js'
import { readIntervalCsv } from './read-interval-csv.js'
import { seriesToYear } from './series-to-year.js'
import { spreadMonths, spreadYear } from './shape-hours.js'
import { monthlyTotals, type UsageYear } from './usage-year.js'

/** What usage needs from outside its part of the project file. */
export interface UsageContext {
  /** Text of the file that `green_button` or `interval_csv.file` names. */
  readonly fileText?: string
  /** Local standard time minus UTC, h; from the site. */
  readonly utcOffsetH?: number
  /** State of the house, two letters. */
  readonly state?: string
}

const KINDS = ['monthly_kwh', 'annual_kwh', 'green_button', 'interval_csv'] as const

function kindOf(usage: Usage): (typeof KINDS)[number] {
  const stated = KINDS.filter((kind) => usage[kind] !== undefined)
  const only = stated[0]
  if (only !== undefined && stated.length === 1) return only
  throw new StageError(
    'usage',
    `usage states ${stated.length === 0 ? 'no energy' : stated.join(' and ')}; exactly one of ${KINDS.join(', ')} is needed`,
    'Take twelve monthly kWh from the bills, or download the usage from the site of the utility.',
  )
}

/**
 * Use of the house, hour by hour through a typical year of local standard time, with the calendar of its weekdays.
 *
 * @throws StageError when the use is missing, not twelve months, no house's, or a meter file has holes or contradictions.
 * @limits From totals the hours are those of a class mean: a single home is spikier, so own use comes out too high.
 */
export function readUsage(stated: Usage | undefined, context: UsageContext): Result<UsageYear> {
  const worksheet = new Worksheet()
  const usage = stated ?? {}
  const kind = kindOf(usage)
  const year =
    kind === 'green_button' || kind === 'interval_csv'
      ? fromMeter(usage, kind, context, worksheet)
      : fromTotals(usage, kind, context, worksheet)
  checkUse(year, `usage.${kind}`, worksheet)
  return worksheet.result(year)
}

function assumedDaylightSaving(worksheet: Worksheet): boolean {
  worksheet.assume({
    path: 'usage.daylight_saving',
    value: 'true',
    unit: '',
    why: 'clocks change in all states but Arizona and Hawaii',
    source: { document: '15 USC 260a', standing: 'from memory' },
  })
  return true
}

function fromTotals(
  usage: Usage,
  kind: 'monthly_kwh' | 'annual_kwh',
  context: UsageContext,
  worksheet: Worksheet,
): UsageYear {
  const months = usage.monthly_kwh
  if (months !== undefined && months.length !== 12) {
    throw new StageError(
      'usage.monthly_kwh',
      `there are ${String(months.length)} months, not 12`,
      'State twelve totals, January first.',
    )
  }
  const bad = (months ?? [usage.annual_kwh ?? 0]).find((kwh) => !Number.isFinite(kwh) || kwh < 0)
  if (bad !== undefined) {
    throw new StageError(`usage.${kind}`, `${String(bad)} is no use in kWh`, 'State kWh, zero or above.')
  }
  const shape = chooseShape(usage.load_shape, context.state, worksheet)
  const daylightSaving = usage.daylight_saving ?? assumedDaylightSaving(worksheet)
  const year =
    usage.year ??
    worksheet.assume({
      path: 'usage.year',
      value: 2026,
      unit: '',
      why: 'its weekdays and holidays stand for a typical year',
      source: { document: '', standing: 'common practice, no source' },
    })
  const calendar = makeCalendar(`${String(year)}-01-01`, daylightSaving)
  const usageKwh = spreadMonths(months ?? spreadYear(usage.annual_kwh ?? 0, shape), shape, calendar)
  const monthly = monthlyTotals(usageKwh, calendar)
  worksheet.find({
    severity: 'note',
    id: 'usage.hours-estimated',
    message:
      'the hours of use are those of a load shape, not of this house; a single home is spikier, so own use of solar energy is overstated',
    where: `usage.${kind}`,
    fix: 'Use a meter export when the tariff pays exports less than it charges.',
  })
  return {
    usageKwh,
    calendar,
    values: {
      from: kind,
      load_shape: shape === 'even' ? 'even' : shape.name,
      first_date: calendar.firstDate,
      daylight_saving: daylightSaving,
      annual_kwh: Math.round(monthly.reduce((a, b) => a + b, 0) * 1e6) / 1e6,
      monthly_kwh: monthly,
      meter: null,
    },
  }
}

function fromMeter(
  usage: Usage,
  kind: 'green_button' | 'interval_csv',
  context: UsageContext,
  worksheet: Worksheet,
): UsageYear {
  const text = context.fileText
  if (text === undefined) throw new StageError(`usage.${kind}`, 'the file was not read', 'Check the path of the file.')
  const stated = context.utcOffsetH === undefined ? undefined : context.utcOffsetH * 3600
  let series: MeterSeries
  if (usage.interval_csv === undefined) series = readGreenButton(text, usage.overlaps)
  else {
    const daylight = usage.daylight_saving ?? assumedDaylightSaving(worksheet)
    const mapping = usage.interval_csv
    const clock = mapping.clock === 'local' && !daylight ? 'standard' : mapping.clock
    series = {
      ...readIntervalCsv(text, { ...mapping, clock }, neededOffset(stated), usage.overlaps),
      daylightSaving: daylight,
    }
  }
  const offset = neededOffset(series.utcOffsetS ?? stated)
  if (stated !== undefined && offset !== stated) {
    worksheet.find({
      severity: 'warning',
      id: 'usage.time-zone-differs',
      message: `the meter file says ${String(offset / 3600)} h from UTC, the site ${String(stated / 3600)} h; the site's is used`,
      where: 'site.utc_offset_h',
    })
  }
  const daylightSaving = usage.daylight_saving ?? series.daylightSaving ?? assumedDaylightSaving(worksheet)
  const policy = usage.fill_gaps ?? 'refuse'
  return seriesToYear(series, { from: kind, utcOffsetS: stated ?? offset, daylightSaving, policy }, worksheet)
}

function neededOffset(seconds: number | undefined): number {
  if (seconds !== undefined) return seconds
  throw new StageError(
    'site.utc_offset_h',
    'the time zone of the house is not known, so meter times cannot be placed',
    'State site.utc_offset_h: local STANDARD time minus UTC, such as -5 for Eastern.',
  )
}
