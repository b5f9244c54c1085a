import type { Project } from '../../project/index.js'
import { DAY_CORRELATION } from '../../tables/fieldwork/index.js'
import { StageError, Worksheet, type Result } from '../../worksheet/index.js'
import type { YieldRun } from '../../yield/index.js'
import type { ProductionSeries } from '../production/index.js'
import { countDays, type Period } from './count-days.js'
import { dayModel, kindsOfDay, KIND_COUNT, type DayModel } from './day-model.js'
import type { Place } from './daylight.js'
import { certainSum, expectedRange, percentileOf } from './expected-range.js'
import { findSigns, judgeSum } from './find-signs.js'
import { monthAround, projectRest, yearAround } from './project-rest.js'
import { recordReview } from './record-review.js'
import type { CumulativePoint, MonthReview, ReviewValues } from './review-values.js'
import type { ObservedDay } from './signs/observed-day.js'
import { reviewModules } from './signs/modules.js'
import { quantileKwh, sumDistribution, type SumDistribution } from './sum-distribution.js'
import { methodSpread, slowWeatherSpread, type LastingSpread } from './spread.js'
import { ratedAcKw } from './system-limits.js'
import { calendarDay, dateText } from '../../values/index.js'

/** Most points of the cumulative course. */
const COURSE_POINTS = 40

export interface ReviewRequest {
  readonly project: Project
  /** The long-term estimate of the project. */
  readonly run: YieldRun
  readonly series: ProductionSeries
  /** Modelled energy of the very days that were measured, by number of the day, and how sure it is. */
  readonly weather?: { readonly kwhByDay: ReadonlyMap<number, number>; readonly spread: number; readonly name: string }
}

/**
 * Sets measured production beside what these days should have given.
 *
 * Every day is one of its month's ten kinds with equal chance; days hang together from one to the next. The sum over the
 * measured days gives the range of weather luck; how sure the method is widens it and does not shrink with more days.
 *
 * @throws StageError when no whole day was measured.
 * @limits The range knows neither a climate that has changed nor shade that the project file does not hold.
 */
export function reviewProduction(request: ReviewRequest): Result<ReviewValues> {
  const { project, run, series, weather } = request
  const worksheet = new Worksheet()
  for (const finding of series.findings) worksheet.find(finding)
  for (const { path, value, why } of series.taken) {
    worksheet.assume({
      path,
      value,
      unit: '',
      why,
      source: { document: 'the table of measured production', standing: 'project file' },
    })
  }
  const correlation =
    project.production?.day_correlation ??
    worksheet.assume({
      path: 'production.day_correlation',
      value: DAY_CORRELATION.value,
      unit: '',
      why: DAY_CORRELATION.why,
      source: DAY_CORRELATION.source,
    })
  const place: Place = {
    latitudeDeg: project.site.latitude_deg,
    longitudeDeg: project.site.longitude_deg,
    utcOffsetH: project.site.utc_offset_h ?? run.climate.utcOffsetH,
  }
  const counted = countDays(series, place)
  const periods =
    weather === undefined
      ? counted.periods
      : counted.periods.filter((period) => daysOf(period).every((day) => weather.kwhByDay.has(day)))
  const days = periods.flatMap(daysOf)
  const [firstDay, lastDay] = [days[0], days.at(-1)]
  if (firstDay === undefined || lastDay === undefined) {
    throw new StageError(
      'production',
      'no whole day was measured, so that there is nothing to compare',
      'give at least one day from before sunrise to after sunset',
    )
  }
  const model = dayModel(run)
  const longTerm: LastingSpread = { method: methodSpread(run), slowWeather: slowWeatherSpread(run, model, correlation) }
  const lasting: LastingSpread = weather === undefined ? longTerm : { method: weather.spread, slowWeather: 0 }
  const spread = Math.hypot(lasting.method, lasting.slowWeather)
  const measuredKwh = sumOf(periods)
  const course =
    weather === undefined ? luckyCourse(periods, model, correlation) : certainCourse(periods, weather.kwhByDay)
  const expected = expectedRange(course.total, lasting)
  const percentile = percentileOf(course.total, measuredKwh, spread)
  const clearest = (day: number): number => weather?.kwhByDay.get(day) ?? kindsOfDay(model, day)[KIND_COUNT - 1] ?? 0
  const observed = periods.flatMap((period): ObservedDay[] => {
    const best = clearest(period.firstDay)
    return period.days === 1 && best > 0 ? [{ day: period.firstDay, kwh: period.kwh, ratio: period.kwh / best }] : []
  })
  const basis = { model, correlation, spread: Math.hypot(longTerm.method, longTerm.slowWeather) }
  const modules = reviewModules(
    series.moduleIds,
    periods,
    Object.values(run.result.values.arrays).flatMap((array) => array.by_module),
  )
  const values: ReviewValues = {
    file: {
      resolution: series.resolution,
      interval_min: series.stepMin ?? null,
      unit: series.unit,
      meter: series.meter,
      clock: series.clock,
    },
    period: {
      from: dateText(firstDay),
      to: dateText(lastDay),
      days_counted: days.length,
      days_missing: counted.missing.length,
      left_out_kwh: counted.leftOutKwh,
    },
    basis: weather === undefined ? 'long_term_days' : 'weather_of_these_hours',
    measured_kwh: measuredKwh,
    expected,
    measured_over_expected: expected.mean_kwh > 0 ? measuredKwh / expected.mean_kwh : 0,
    percentile,
    percentile_of_weather: weather === undefined ? percentileOf(course.total, measuredKwh, 0) : null,
    months: reviewMonths(
      periods,
      (own) =>
        weather === undefined ? luckyCourse(own, model, correlation).total : certainCourse(own, weather.kwhByDay).total,
      lasting,
    ),
    projection: {
      month: projectRest(...monthAround(lastDay), counted.periods, basis),
      year: projectRest(...yearAround(firstDay, lastDay), counted.periods, basis),
    },
    cumulative: cumulativeCourse(periods, course.at, spread),
    modules,
  }
  judgeSum(values, worksheet)
  findSigns({ series, counted, observed, model, place, modules, ratedAcKw: ratedAcKw(project) }, worksheet)
  recordReview(values, correlation, weather?.name, worksheet)
  return worksheet.result(values)
}

interface Course {
  readonly total: SumDistribution
  /** By index of the period. */
  readonly at: ReadonlyMap<number, SumDistribution>
}

function luckyCourse(periods: readonly Period[], model: DayModel, correlation: number): Course {
  const odds = periods.flatMap((period) => daysOf(period).map((day) => ({ day, kindsKwh: kindsOfDay(model, day) })))
  const ends: number[] = []
  let count = 0
  for (const period of periods) ends.push((count += period.days) - 1)
  const shown = shownPeriods(periods.length)
  const { total, at } = sumDistribution(odds, correlation, new Set(shown.map((index) => ends[index] as number)))
  return { total, at: new Map(shown.map((index) => [index, at.get(ends[index] as number) ?? total])) }
}

function certainCourse(periods: readonly Period[], kwhByDay: ReadonlyMap<number, number>): Course {
  const at = new Map<number, SumDistribution>()
  const shown = new Set(shownPeriods(periods.length))
  let sum = 0
  periods.forEach((period, index) => {
    for (const day of daysOf(period)) sum += kwhByDay.get(day) ?? 0
    if (shown.has(index)) at.set(index, certainSum(sum))
  })
  return { total: certainSum(sum), at }
}

function shownPeriods(count: number): number[] {
  const points = Math.min(count, COURSE_POINTS)
  return Array.from({ length: points }, (_, at) => Math.ceil(((at + 1) * count) / points) - 1)
}

function cumulativeCourse(
  periods: readonly Period[],
  at: ReadonlyMap<number, SumDistribution>,
  spread: number,
): CumulativePoint[] {
  let measured = 0
  return periods.flatMap((period, index): CumulativePoint[] => {
    measured += period.kwh
    const distribution = at.get(index)
    if (distribution === undefined) return []
    return [
      {
        date: dateText(period.firstDay + period.days - 1),
        measured_kwh: measured,
        expected_kwh: distribution.meanKwh,
        p10_kwh: quantileKwh(distribution, 0.1, spread),
        p90_kwh: quantileKwh(distribution, 0.9, spread),
      },
    ]
  })
}

function reviewMonths(
  periods: readonly Period[],
  distributionOf: (own: readonly Period[]) => SumDistribution,
  lasting: LastingSpread,
): MonthReview[] {
  const byMonth = new Map<string, Period[]>()
  for (const period of periods) {
    const key = dateText(period.firstDay).slice(0, 7)
    // A reading over the end of a month belongs to neither.
    if (calendarDay(period.firstDay + period.days - 1).month !== calendarDay(period.firstDay).month) continue
    byMonth.set(key, [...(byMonth.get(key) ?? []), period])
  }
  return [...byMonth].map(([month, own]) => {
    const distribution = distributionOf(own)
    const measured = sumOf(own)
    return {
      month,
      days_counted: own.reduce((sum, period) => sum + period.days, 0),
      measured_kwh: measured,
      ...expectedRange(distribution, lasting),
      percentile: percentileOf(distribution, measured, Math.hypot(lasting.method, lasting.slowWeather)),
    }
  })
}

function daysOf(period: Period): number[] {
  return Array.from({ length: period.days }, (_, at) => period.firstDay + at)
}

function sumOf(periods: readonly Period[]): number {
  return periods.reduce((sum, period) => sum + period.kwh, 0)
}
