import { nearestSnowfall } from '../../climate/index.js'
import type { Project } from '../../project/index.js'
import { DAY_CORRELATION, REVIEW_DESIGN } from '../../tables/fieldwork/index.js'
import { Worksheet, type Result } from '../../worksheet/index.js'
import type { YieldRun } from '../../yield/index.js'
import type { ProductionSeries } from '../production/index.js'
import { calibrate } from './calibration/calibrate.js'
import { collectSigns } from './collect-signs.js'
import { countDays, daysOf, sumOf, wholeDays, type Period } from './count-days.js'
import { courseOfDays, cumulativeCourse, type Course } from './course.js'
import { dayModel } from './day-model.js'
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
import type { Calibration, ReviewValues } from './review-values.js'
import { observedDays } from './signs/observed-day.js'
import { keptByDays, reviewMonths } from './review-months.js'
import { tableValues, tellTable } from './tell-table.js'
import { basisOf, clearestOf, tellPart } from './known-weather.js'
import { stoppedMeters, withoutExplained } from './signs/stopped-meters.js'
import { reviewModules } from './signs/modules.js'
import { methodSpread, mixedSpread, slowWeatherSpread, totalSpread, type LastingSpread } from './spread.js'
import { ratedAcKw } from '../../roof/index.js'
import { calendarDay, dateText } from '../../values/index.js'

const NO_DAYS: ReadonlyMap<number, number> = new Map()

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
  const { periods } = counted
  const { firstDay, lastDay, days } = wholeDays(periods)
  const model = dayModel(run)
  const longTerm: LastingSpread = { method: methodSpread(run), slowWeather: slowWeatherSpread(run, model, correlation) }
  const kwhByDay = weather?.kwhByDay ?? NO_DAYS
  const courseOf = (some: readonly Period[]): Course => courseOfDays(some, model, correlation, kwhByDay)
  const lastingOf = ({ total, modelledKwh }: Course): LastingSpread =>
    weather === undefined ? longTerm : mixedSpread(longTerm, weather.spread, shareOf(modelledKwh, total.meanKwh))
  const course = courseOf(periods)
  const lasting = lastingOf(course)
  const spread = totalSpread(lasting)
  const modelledDays = periods.flatMap(daysOf).filter((day) => kwhByDay.has(day)).length
  const basisOfDays = basisOf(modelledDays, days)
  const measuredKwh = sumOf(periods)
  const expected = expectedRange(course.total, lasting)
  const basis = { model, correlation, spread: totalSpread(longTerm) }
  const placesOfModules = Object.values(run.result.values.arrays).flatMap((array) => array.by_module)
  const isMetered = series.partsAre === 'meters'
  const modules = isMetered ? [] : reviewModules(series.moduleIds, periods, placesOfModules)
  const judged = judgedDays(periods, model, kwhByDay)
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
  const observed = observedDays(periods, clearestOf(judged))
  const rated = ratedAcKw(project)
  const isSnowy = (day: number): boolean => (snowIn?.[calendarDay(day).month] ?? 0) >= REVIEW_DESIGN.snowMonthIn
  const stops = isMetered ? stoppedMeters(series.moduleIds, periods, isSnowy) : []
  const found = [
    ...withoutExplained(collected.signs, stops),
    ...stops,
    ...tableSigns({ series, observed, model, place, modules, ratedAcKw: rated, firstDay, lastDay }),
  ].toSorted((a, b) => b.lostKwh - a.lostKwh)
  const performance = performanceOf(collected, measuredKwh / Math.max(1e-9, expected.mean_kwh), correlation, lasting)
  const year = projectRest(...yearAround(firstDay, lastDay), counted.periods, basis)
  const calibration = (): Calibration | null => {
    // Days of known weather tell more of the estimate than the others, which would only blur them.
    const own =
      weather === undefined ? periods : periods.filter((each) => daysOf(each).every((day) => kwhByDay.has(day)))
    const ownCourse = courseOf(own)
    return calibrate(
      {
        run,
        days: own.flatMap(daysOf),
        measuredKwh: sumOf(own),
        expectedKwh: ownCourse.total.meanKwh,
        isWeatherKnown: weather !== undefined,
        snowIn,
        daySpread: weatherSpreadOf(own, model, kwhByDay, correlation),
        lasting: lastingOf(ownCourse),
        signs: found,
      },
      worksheet,
    )
  }
  const values: ReviewValues = {
    file: tableValues(series),
    period: {
      from: dateText(firstDay),
      to: dateText(lastDay),
      days_counted: days,
      days_missing: counted.missing.length,
      days_by_weather: modelledDays,
      left_out_kwh: counted.leftOutKwh,
    },
    basis: basisOfDays,
    measured_kwh: measuredKwh,
    expected,
    measured_over_expected: expected.mean_kwh > 0 ? measuredKwh / expected.mean_kwh : 0,
    percentile: percentileOf(course.total, measuredKwh, spread),
    percentile_of_weather: modelledDays < days ? percentileOf(course.total, measuredKwh, 0) : null,
    months: reviewMonths(periods, keptByDays(courseOf, weather === undefined), lastingOf),
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
  if (weather !== undefined) tellPart(values, weather.name, worksheet)
  judgeSum(values, worksheet)
  tellSigns(found, worksheet)
  const hasDirt = found.some(({ kind }) => kind === 'soiling')
  findSigns({ series, counted, observed, model, place, modules, ratedAcKw: rated, hasDirt }, worksheet)
  if (!hasDirt && lastDay - firstDay > SHORT_DAYS) tellHints(collected, worksheet)
  recordReview(values, correlation, weather?.name, worksheet)
  return worksheet.result(values)
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

function shareOf(part: number, whole: number): number {
  return whole > 0 ? part / whole : 0
}
