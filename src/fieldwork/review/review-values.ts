import type { YearOnYear } from './signs/degradation.js'
import type { Sign } from './signs/sign.js'
import type { Dollars, KilowattHours } from '../../values/index.js'

/** Result of `review-output`; names and units are part of the JSON format. */
export interface ReviewValues {
  readonly file: {
    readonly resolution: 'interval' | 'day' | 'month'
    readonly interval_min: number | null
    readonly unit: string
    readonly meter: 'interval' | 'cumulative'
    readonly clock: 'local' | 'standard' | 'utc'
  }
  readonly period: {
    readonly from: string
    readonly to: string
    readonly days_counted: number
    readonly days_missing: number
    /** Of the counted days those that are judged by their own weather. */
    readonly days_by_weather: number
    /** Energy of days that are not wholly covered; not compared. */
    readonly left_out_kwh: number
  }
  /** What the comparison rests on: the long-term kinds of day, the weather of these very hours, or each for some of the days. */
  readonly basis: 'long_term_days' | 'weather_of_these_hours' | 'weather_of_some_days'
  readonly measured_kwh: number
  readonly expected: ExpectedRange
  readonly measured_over_expected: number
  readonly percentile: number
  /** Percentile by weather alone, as if the method were exact; null where the weather of all days is given. */
  readonly percentile_of_weather: number | null
  readonly months: readonly MonthReview[]
  /** Present output over what is expected of the same days, with its 80 % interval by the weather of these days and years. */
  readonly performance_pct: number
  readonly performance_low_pct: number
  readonly performance_high_pct: number
  /** First day that the present output rests on: the day after the last fault that was mended, or the first of one that lasts. */
  readonly performance_from: string
  /** What may be wrong, and what it has cost. */
  readonly signs: readonly Sign[]
  /** Kinds of sign that this table cannot show, with what they would want. */
  readonly not_looked_for: readonly string[]
  /** Change with age from days a year apart; null below two years. */
  readonly degradation: YearOnYear | null
  readonly projection: { readonly month: Projection; readonly year: Projection } & MendedProjection
  readonly cumulative: readonly CumulativePoint[]
  readonly modules: readonly ModuleReview[]
  /** What these days say of the estimate of a mean year; only when asked for, null when the readings do not allow it. */
  readonly calibration?: Calibration | null
}

/** The estimate of the first year before and after the measured days, by Bayes' rule for normal variables. */
export interface Calibration {
  /** Energy of a mean year over that of the estimate. */
  readonly factor: number
  /** Standard deviation of all lasting terms together, before and after; the weather of a year is not in it. */
  readonly prior_spread_pct: number
  readonly spread_pct: number
  /** Standard deviation of measured over expected if the estimate were exact. */
  readonly measurement_pct: number
  readonly terms: readonly CalibratedTerm[]
  readonly p50_kwh: KilowattHours
  readonly p90_kwh: KilowattHours
  readonly prior_p50_kwh: KilowattHours
  readonly prior_p90_kwh: KilowattHours
}

/** A cause of doubt of the yield before and after: standard deviations and mean error, % of the energy of a year. */
export interface CalibratedTerm {
  readonly term: string
  readonly prior_pct: number
  readonly posterior_pct: number
  readonly shift_pct: number
}

/** The 80 % ranges: of weather luck alone, and of weather and method together. */
export interface ExpectedRange {
  readonly mean_kwh: number
  readonly weather_p10_kwh: number
  readonly weather_p90_kwh: number
  readonly p10_kwh: number
  readonly p90_kwh: number
  /** Standard deviation of the method, which no further day makes smaller. */
  readonly method_uncertainty_pct: number
  /** Standard deviation of years beyond that of their days; in the wider range only. */
  readonly slow_weather_pct: number
}

export interface MonthReview extends ExpectedRange {
  readonly month: string
  readonly days_counted: number
  readonly measured_kwh: number
  readonly percentile: number
}

export interface Projection {
  readonly from: string
  readonly to: string
  readonly measured_kwh: number
  readonly days_measured: number
  readonly days_remaining: number
  readonly expected_rest_kwh: number
  readonly projected_kwh: number
  readonly p10_kwh: number
  readonly p90_kwh: number
}

/** The twelve months after the last measured day: with the present output carried on, and with what is wrong put right today. */
export interface MendedProjection {
  /** Last of these days. */
  readonly to: string
  /** What the estimate expects of them. */
  readonly expected_kwh: KilowattHours
  readonly as_is_kwh: KilowattHours
  readonly mended_kwh: KilowattHours
  /** What mending is worth over these months, by the tariff; null where the bill of the project is not known. */
  readonly mending_worth_usd: Dollars | null
}

export interface CumulativePoint {
  readonly date: string
  readonly measured_kwh: number
  readonly expected_kwh: number
  readonly p10_kwh: number
  readonly p90_kwh: number
}

export interface ModuleReview {
  readonly id: string
  readonly measured_kwh: number
  /** Against what its place should give, relative to the median module. */
  readonly relative_pct: number
  /** First day of the run of days without energy up to the end; null while it works. */
  readonly dead_since: string | null
}
