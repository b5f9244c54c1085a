import { nearestSnowfall } from '../../climate/index.js'
import type { Project } from '../../project/index.js'
import { DAY_CORRELATION } from '../../tables/fieldwork/index.js'
import { StageError, Worksheet, type Result } from '../../worksheet/index.js'
import type { YieldRun } from '../../yield/index.js'
import type { ProductionSeries } from '../production/index.js'
import { calibrate } from './calibration/calibrate.js'
import { collectSigns } from './collect-signs.js'
import { countDays, daysOf, sumOf, type Period } from './count-days.js'
import { certainCourse, cumulativeCourse, luckyCourse, type Course } from './course.js'
import { dayModel, kindsOfDay, KIND_COUNT } from './day-model.js'
import type { Place } from './daylight.js'
import { hourModel } from './hour-model.js'
import { judgedDays, weatherSpreadOf } from './judge-days.js'
import { mendedProjection, performanceOf } from './performance.js'
import { systemParts } from './system-parts.js'
import { tableSigns } from './table-signs.js'
import { notLookedFor, signValues, tellHints, tellSigns } from './tell-signs.js'
import { expectedRange, percentileOf } from './expected-range.js'
import { findSigns, judgeSum, SHORT_DAYS } from './find-signs.js'
import { monthAround, projectRest, yearAround } from './project-rest.js'
import { recordReview } from './record-review.js'
import type { Calibration, MonthReview, ReviewValues } from './review-values.js'
import type { ObservedDay } from './signs/observed-day.js'
import { reviewModules } from './signs/modules.js'
import type { SumDistribution } from './sum-distribution.js'
import { methodSpread, slowWeatherSpread, type LastingSpread } from './spread.js'
import { ratedAcKw } from '../../roof/index.js'
import { calendarDay, dateText } from '../../values/index.js'

export interface ReviewRequest {
  readonly project: Project
  /** The long-term estimate of the project. */
  readonly run: YieldRun
  readonly series: ProductionSeries
  /** Modelled energy of the very days that were measured, by number of the day, and how sure it is. */
  readonly weather?: { readonly kwhByDay: ReadonlyMap<number, number>; readonly spread: number; readonly name: string }
  /** What a kWh more is worth by the tariff, USD; undefined where the bill of the project is not known. */
  readonly usdPerKwh?: number | undefined
  /** Whether to say what these days tell of the estimate. */
  readonly calibrate?: boolean | undefined
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
  tellTable(series, worksheet)
  const correlation = dayCorrelation(project, worksheet)
  const place: Place = {
    latitudeDeg: project.site.latitude_deg,
    longitudeDeg: project.site.longitude_deg,
    utcOffsetH: project.site.utc_offset_h ?? run.climate.utcOffsetH,
  }
  const counted = countDays(series, place)
  const periods = comparedPeriods(counted.periods, weather)
  const { firstDay, lastDay, days } = wholeDays(periods)
  const model = dayModel(run)
  const longTerm: LastingSpread = { method: methodSpread(run), slowWeather: slowWeatherSpread(run, model, correlation) }
  const lasting: LastingSpread = weather === undefined ? longTerm : { method: weather.spread, slowWeather: 0 }
  const spread = totalSpread(lasting)
  const courseOf = (some: readonly Period[]): Course =>
    weather === undefined ? luckyCourse(some, model, correlation) : certainCourse(some, weather.kwhByDay)
  const course = courseOf(periods)
  const measuredKwh = sumOf(periods)
  const expected = expectedRange(course.total, lasting)
  const clearest = (day: number): number => weather?.kwhByDay.get(day) ?? kindsOfDay(model, day)[KIND_COUNT - 1] ?? 0
  const basis = { model, correlation, spread: totalSpread(longTerm) }
  const placesOfModules = Object.values(run.result.values.arrays).flatMap((array) => array.by_module)
  const modules = reviewModules(series.moduleIds, periods, placesOfModules)
  const judged = judgedDays(periods, model, weather?.kwhByDay)
  const parts = systemParts(project)
  const snowIn = nearestSnowfall(place)?.monthlyIn
  const collected = collectSigns({
    series,
    days: judged,
    model,
    hours: hourModel(run),
    place,
    parts,
    snowIn,
    correlation,
    lasting: spread,
    statedAgeingPct: run.result.values.lifetime.degradation_pct_per_year,
  })
  const observed = observedDays(periods, clearest)
  const rated = ratedAcKw(project)
  const found = [
    ...collected.signs,
    ...tableSigns({ series, observed, model, place, modules, ratedAcKw: rated, firstDay, lastDay }),
  ].toSorted((a, b) => b.lostKwh - a.lostKwh)
  const performance = performanceOf(collected, measuredKwh / Math.max(1e-9, expected.mean_kwh), correlation, lasting)
  const year = projectRest(...yearAround(firstDay, lastDay), counted.periods, basis)
  const calibration = (): Calibration | null =>
    calibrate(
      {
        run,
        days: periods.flatMap(daysOf),
        measuredKwh,
        expectedKwh: expected.mean_kwh,
        isWeatherKnown: weather !== undefined,
        snowIn,
        daySpread: weatherSpreadOf(periods, model, weather?.kwhByDay, correlation),
        lasting,
        signs: found,
      },
      worksheet,
    )
  const values: ReviewValues = {
    file: tableValues(series),
    period: {
      from: dateText(firstDay),
      to: dateText(lastDay),
      days_counted: days,
      days_missing: counted.missing.length,
      left_out_kwh: counted.leftOutKwh,
    },
    basis: weather === undefined ? 'long_term_days' : 'weather_of_these_hours',
    measured_kwh: measuredKwh,
    expected,
    measured_over_expected: expected.mean_kwh > 0 ? measuredKwh / expected.mean_kwh : 0,
    percentile: percentileOf(course.total, measuredKwh, spread),
    percentile_of_weather: weather === undefined ? percentileOf(course.total, measuredKwh, 0) : null,
    months: reviewMonths(periods, (own) => courseOf(own).total, lasting),
    ...performance.values,
    performance_from: dateText(collected.presentDays[0]?.day ?? firstDay),
    signs: signValues(found, lastDay, request.usdPerKwh),
    not_looked_for: notLookedFor(series, days),
    degradation: collected.ageing ?? null,
    projection: {
      month: projectRest(...monthAround(lastDay), counted.periods, basis),
      year,
      ...mendedProjection(model, lastDay, performance, request.usdPerKwh),
    },
    cumulative: cumulativeCourse(periods, course.at, spread),
    modules,
    ...(request.calibrate === true ? { calibration: calibration() } : {}),
  }
  judgeSum(values, worksheet)
  tellSigns(found, worksheet)
  const hasDirt = found.some(({ kind }) => kind === 'soiling')
  findSigns({ series, counted, observed, model, place, modules, ratedAcKw: rated, hasDirt }, worksheet)
  if (!hasDirt && lastDay - firstDay > SHORT_DAYS) tellHints(collected, worksheet)
  recordReview(values, correlation, weather?.name, worksheet)
  return worksheet.result(values)
}

/** What reading the table found, and what it took for granted. */
function tellTable(series: ProductionSeries, worksheet: Worksheet): void {
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
}

function tableValues(series: ProductionSeries): ReviewValues['file'] {
  return {
    resolution: series.resolution,
    interval_min: series.stepMin ?? null,
    unit: series.unit,
    meter: series.meter,
    clock: series.clock,
  }
}

function dayCorrelation(project: Project, worksheet: Worksheet): number {
  return (
    project.production?.day_correlation ??
    worksheet.assume({
      path: 'production.day_correlation',
      value: DAY_CORRELATION.value,
      unit: '',
      why: DAY_CORRELATION.why,
      source: DAY_CORRELATION.source,
    })
  )
}

/** Where the weather is given, only what lies wholly within it is compared. */
function comparedPeriods(periods: readonly Period[], weather: ReviewRequest['weather']): readonly Period[] {
  if (weather === undefined) return periods
  return periods.filter((period) => daysOf(period).every((day) => weather.kwhByDay.has(day)))
}

function wholeDays(periods: readonly Period[]): { firstDay: number; lastDay: number; days: number } {
  const days = periods.flatMap(daysOf)
  const [firstDay, lastDay] = [days[0], days.at(-1)]
  if (firstDay === undefined || lastDay === undefined) {
    throw new StageError(
      'production',
      'no whole day was measured, so that there is nothing to compare',
      'give at least one day from before sunrise to after sunset',
    )
  }
  return { firstDay, lastDay, days: days.length }
}

/** Single days beside the clearest that they could have been. */
function observedDays(periods: readonly Period[], clearest: (day: number) => number): ObservedDay[] {
  return periods.flatMap((period): ObservedDay[] => {
    const best = clearest(period.firstDay)
    return period.days === 1 && best > 0 ? [{ day: period.firstDay, kwh: period.kwh, ratio: period.kwh / best }] : []
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
      percentile: percentileOf(distribution, measured, totalSpread(lasting)),
    }
  })
}

function totalSpread({ method, slowWeather }: LastingSpread): number {
  return Math.hypot(method, slowWeather)
}
