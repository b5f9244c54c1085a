import { coveredDays, houseOf, kindOfText, seriesClimate } from '../../climate/index.js'
import type { Project, StationTable, WeatherFile } from '../../project/index.js'
import { StageError, Worksheet } from '../../worksheet/index.js'
import { runYield, type YieldRun } from '../../yield/index.js'
import type { ProductionSeries } from '../production/index.js'
import type { ReviewRequest } from './review-production.js'
import { methodSpread } from './spread.js'
import { calendarDay, dateText, dayNumber, MS_PER_DAY } from '../../values/index.js'

/** The weather file of these very days. */
interface MeasuredWeather {
  readonly name: string
  readonly text: string
  /** How the table of a station is to be read; the other kinds of file say it themselves. */
  readonly table?: StationTable | undefined
}

/**
 * Models the measured days with the weather of these very hours: an hourly EPW file, a file of the US solar radiation database, or the
 * table of a station.
 *
 * @param name Name of the weather file. @param text The file.
 * @param table How the table of a station is to be read; the other kinds of file say it themselves.
 * @throws StageError when the file is of other years, such as a typical year put together from many, or cannot be read.
 */
export function weatherOfDays(
  project: Project,
  name: string,
  text: string,
  series: ProductionSeries,
  table?: StationTable,
): NonNullable<ReviewRequest['weather']> {
  const weather: MeasuredWeather = { name, text, table }
  const first = dayNumber(series.spans.at(0)?.startMs ?? 0)
  const last = dayNumber((series.spans.at(-1)?.endMs ?? 0) - 1)
  const measured = Array.from({ length: last - first + 1 }, (_, at) => first + at)
  const known = knownDays(project, weather)
  const kwhByDay = new Map<number, number>()
  let spread = 0
  for (const year of new Set(measured.filter((day) => known.days.has(day)).map((day) => calendarDay(day).year))) {
    const run = runOfYear(project, weather, known.choice, year)
    const kwh = dayEnergies(run)
    for (const day of measured) {
      const { year: own, month, dayOfMonth } = calendarDay(day)
      const energy = kwh.get(`${month + 1}-${dayOfMonth}`)
      if (own === year && known.days.has(day) && energy !== undefined) kwhByDay.set(day, energy)
    }
    spread = Math.max(spread, methodSpread(run))
  }
  if (kwhByDay.size === 0) {
    const found = [...new Set([...known.days].map((day) => calendarDay(day).year))].toSorted((a, b) => a - b)
    if (found.length === 0) {
      throw new StageError(
        'site.climate',
        `the weather file ${weather.name} holds no whole day of weather`,
        'give an hourly EPW file, a file of the US solar radiation database, or a table whose columns stand under production.weather_table',
      )
    }
    throw new StageError(
      'site.climate',
      `the weather file ${weather.name} holds ${found.length === 1 ? `the year ${found[0]}` : `days of the years ${found.join(', ')}`}, the measured days are ${dateText(first)} to ${dateText(last)}`,
      'give the actual weather of the measured year; a typical year belongs under site.climate of the project',
    )
  }
  return { kwhByDay, spread, name: weather.name }
}

interface KnownDays {
  /** Days since 1970-01-01 whose weather was measured. */
  readonly days: ReadonlySet<number>
  /** How a series is read; undefined for EPW. */
  readonly choice: WeatherFile | undefined
}

function knownDays(project: Project, { name, text, table }: MeasuredWeather): KnownDays {
  const kind = kindOfText(text) ?? (table === undefined ? 'epw' : 'station_csv')
  if (kind === 'epw') return { days: daysOfEpw(text), choice: undefined }
  const choice: WeatherFile = { file: name, kind, ...(table === undefined ? {} : { table }) }
  return { days: asProduction(() => coveredDays(choice, text, houseOf(project.site))), choice }
}

function runOfYear(
  project: Project,
  { name, text }: MeasuredWeather,
  choice: WeatherFile | undefined,
  year: number,
): YieldRun {
  const files = new Map([[name, text]])
  if (choice === undefined) return runYield({ ...project, site: { ...project.site, climate: { epw: name } } }, files)
  const site = { ...project.site, climate: { ...choice, year } }
  return asProduction(() => {
    // A part of a year will do: only days that the file covers are looked at.
    const climate = seriesClimate(site.climate, text, houseOf(site), new Worksheet(), false)
    return runYield({ ...project, site }, files, { climate })
  })
}

/** The table is declared under `production`, and not where the reader of series looks for it. */
function asProduction<Value>(read: () => Value): Value {
  try {
    return read()
  } catch (error) {
    if (!(error instanceof StageError) || !error.where.startsWith('site.climate.table')) throw error
    const swap = (text: string): string => text.replaceAll('site.climate.table', 'production.weather_table')
    throw new StageError(swap(error.where), swap(error.message), swap(error.fix))
  }
}

/** Energy of each day of the year of a file, kWh, by `month-day`; what inverters use at night is taken off. */
function dayEnergies({ steps, system, result }: YieldRun): Map<string, number> {
  const sums = new Map<string, number>()
  const monthSums = Array.from({ length: 12 }, () => 0)
  const daysOfMonth = Array.from({ length: 12 }, () => new Set<number>())
  for (let step = 0; step < steps.length; step += 1) {
    const { month, day = 0 } = steps.label(step)
    const kwh = (system.acW[step]! * steps.hours[step]!) / 1000
    const key = `${month}-${day}`
    sums.set(key, (sums.get(key) ?? 0) + kwh)
    monthSums[month - 1] = monthSums[month - 1]! + kwh
    daysOfMonth[month - 1]!.add(day)
  }
  for (const [key, kwh] of sums) {
    const month = Number(key.split('-')[0]) - 1
    const night = (monthSums[month]! - (result.values.monthly[month]?.ac_kwh ?? 0)) / daysOfMonth[month]!.size
    sums.set(key, kwh - night)
  }
  return sums
}

/** Days of an EPW file; its rows were checked by its reader. */
function daysOfEpw(text: string): Set<number> {
  const days = new Set<number>()
  for (const match of text.matchAll(/^(\d{4}),(\d{1,2}),(\d{1,2}),\d{1,2},/gmu)) {
    days.add(Date.UTC(Number(match[1]), Number(match[2]) - 1, Number(match[3])) / MS_PER_DAY)
  }
  return days
}
