import { readFileSync } from 'node:fs'
import { dailyExtraterrestrialWhM2 } from '../../src/climate/index.js'
import type { ProductionSeries, Span } from '../../src/fieldwork/production/index.js'
import { methodSpread } from '../../src/fieldwork/review/index.js'
import { loadProject, type Project } from '../../src/project/index.js'
import { expectedHours, runYield, type YieldRun } from '../../src/yield/index.js'
import { randomOf } from './random-of.js'

const DAY_MS = 86_400_000
/** The year that simulated plants begin in. */
export const FIRST_DAY = Date.UTC(2025, 0, 1) / DAY_MS

/** A plant at a weather station: what reviews know of it, and what an hourly file of the station makes it give. */
export interface Plant {
  readonly name: string
  readonly project: Project
  /** The estimate that a review has: kinds of day of the built-in climate. */
  readonly run: YieldRun
  /** Energy of each hour of the file's year, kWh, 365 days, local standard time. */
  readonly hourKwh: Float64Array
  /** How sure the estimate is: the error of a simulated plant is drawn from it. */
  readonly method: number
}

/** The demo house, moved to the station of an EPW file. */
export function plantOf(epwPath: string, projectPath: string): Plant {
  const text = readFileSync(epwPath, 'utf8')
  const cells = (text.split('\n', 1)[0] as string).split(',')
  const { project, files } = loadProject({ path: projectPath })
  const site = { latitude_deg: Number(cells[6]), longitude_deg: Number(cells[7]), utc_offset_h: Number(cells[8]) }
  const moved: Project = { ...project, site }
  const run = runYield(moved, files)
  const hourly = runYield({ ...moved, site: { ...site, climate: { epw: 'w' } } }, new Map([...files, ['w', text]]))
  return { name: cells[1] ?? '', project: moved, run, hourKwh: expectedHours(hourly).kwh, method: methodSpread(run) }
}

/** What is wrong with a simulated plant; days count from the first of the year. */
export interface SimulatedFault {
  readonly kind: string
  /** Energy of an hour that is left. @param solarH Hour of the day from 0, at its middle. */
  readonly left: (kwh: number, day: number, solarH: number) => number
}

const BLOCK_DAYS = 5
/** Days are taken from within so many days of the season. */
const SEASON_DAYS = 20
const METER_NOISE = 0.005

/**
 * Invented years: days of the station's file in blocks of five from within twenty days of the season. Each month has a lean of its
 * own: of two blocks the sunnier is taken with a chance drawn for the month, so that months and years differ as weather does.
 * The plant's own lasting error is drawn from the method's spread, and each reading has noise of 0.5 %.
 */
export function simulatedHours(plant: Plant, years: number, seed: number): Float64Array {
  return simulatedYears(plant, years, seed).hourKwh
}

/** Such years, and beside them what their weather alone gives in the model: without the plant's error and without noise. */
export function simulatedYears(
  plant: Plant,
  years: number,
  seed: number,
): { readonly hourKwh: Float64Array; readonly weatherKwh: Float64Array } {
  const random = randomOf(seed)
  const kept = 1 + plant.method * random.normal()
  const latitude = plant.project.site.latitude_deg
  const outside = Array.from({ length: 365 }, (_, day) => dailyExtraterrestrialWhM2(latitude, day + 1))
  const dayKwh = Array.from({ length: 365 }, (_, day) => sumOf(plant.hourKwh, 24 * day, 24 * day + 24))
  const result = new Float64Array(365 * 24 * years)
  const weatherKwh = new Float64Array(365 * 24 * years)
  for (let at = 0; at < 365 * years;) {
    const lean = Array.from({ length: 12 }, () => random.uniform())
    for (let day = 0; day < 365;) {
      const draw = (): number => (day + Math.round((2 * random.uniform() - 1) * SEASON_DAYS) + 730) % 365
      const [one, other] = [draw(), draw()]
      const sunny = (from: number): number =>
        Array.from({ length: BLOCK_DAYS }, (_, add) => dayKwh[(from + add) % 365]!).reduce((a, b) => a + b, 0)
      const [more, less] = sunny(one) > sunny(other) ? [one, other] : [other, one]
      const from = random.uniform() < lean[Math.floor(day / 30.5)]! ? more : less
      for (let add = 0; add < BLOCK_DAYS && day < 365; add += 1, day += 1, at += 1) {
        const source = (from + add) % 365
        const season = outside[day]! / outside[source]!
        for (let hour = 0; hour < 24; hour += 1) {
          const kwh = plant.hourKwh[24 * source + hour]!
          weatherKwh[24 * at + hour] = kwh * season
          result[24 * at + hour] = kwh * kept * season * (1 + METER_NOISE * random.normal())
        }
      }
    }
  }
  return { hourKwh: result, weatherKwh }
}

/** How a weather file of the very days errs: its sensor the whole year, each day, and how far one day's error goes on in the next. */
const SENSOR_ERROR = 0.042
const DAY_ERROR = 0.08
const DAY_ERROR_CORRELATION = 0.3
/** And its model by season: a wave of this height round the year. */
const SEASON_ERROR = 0.02

/**
 * Energy of each hour as a review models it that has the weather of these hours, with errors of the weather and of the model drawn for the
 * year: sensor 4.2 %, season 2 %, days 8 % that hang together by 0.3.
 */
export function modelledHours(weatherKwh: Float64Array, seed: number): Float64Array {
  const random = randomOf(seed)
  const [sensor, phase] = [1 + SENSOR_ERROR * random.normal(), 2 * Math.PI * random.uniform()]
  let error = random.normal()
  return weatherKwh.map((kwh, hour) => {
    const day = Math.floor(hour / 24)
    if (hour % 24 === 0)
      error = DAY_ERROR_CORRELATION * error + Math.sqrt(1 - DAY_ERROR_CORRELATION ** 2) * random.normal()
    const season = 1 + SEASON_ERROR * Math.sin((2 * Math.PI * day) / 365 + phase)
    return kwh * sensor * season * Math.max(0.3, 1 + DAY_ERROR * error)
  })
}

/** Sums of the hours of each day, by number of the day. */
export function daySums(hourKwh: Float64Array): Map<number, number> {
  const days = hourKwh.length / 24
  return new Map(
    Array.from({ length: days }, (_, day) => [FIRST_DAY + day, sumOf(hourKwh, 24 * day, 24 * day + 24)] as const),
  )
}

function sumOf(values: Float64Array, from: number, end: number): number {
  let sum = 0
  for (let at = from; at < end; at += 1) sum += values[at]!
  return sum
}

/** The readings of simulated hours, as hours or days. */
export function seriesOfHours(
  hours: Float64Array,
  resolution: 'interval' | 'day',
  fault?: SimulatedFault,
): ProductionSeries {
  const stepH = resolution === 'day' ? 24 : 1
  const spans: Span[] = []
  for (let at = 0; at < hours.length; at += stepH) {
    let kwh = 0
    for (let hour = at; hour < at + stepH; hour += 1) {
      const whole = hours[hour]!
      kwh += fault === undefined ? whole : fault.left(whole, Math.floor(hour / 24), (hour % 24) + 0.5)
    }
    const startMs = FIRST_DAY * DAY_MS + (at * DAY_MS) / 24
    spans.push({
      startMs,
      endMs: startMs + (stepH * DAY_MS) / 24,
      kwh: Math.round(kwh * 1000) / 1000,
      moduleKwh: [],
      line: spans.length + 2,
    })
  }
  return {
    resolution,
    stepMin: resolution === 'interval' ? 60 : undefined,
    unit: 'kwh',
    meter: 'interval',
    clock: 'standard',
    spans,
    moduleIds: [],
    findings: [],
    taken: [],
  }
}
