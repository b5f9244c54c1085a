import type { CollectedSigns } from './collect-signs.js'
import { weatherSpread } from './judge-days.js'
import { kindsOfDay, KIND_COUNT, type DayModel } from './day-model.js'
import type { MendedProjection } from './review-values.js'
import type { LastingSpread } from './spread.js'
import { dateText, type Dollars } from '../../values/index.js'

/** Standard deviations from the middle of a normal law to the ends of its middle 80 %. */
const TO_P90 = 1.2816

/** How the system does now, and how it would do mended, as shares of what is expected. */
export interface Performance {
  readonly present: number
  readonly mended: number
  readonly values: {
    readonly performance_pct: number
    readonly performance_low_pct: number
    readonly performance_high_pct: number
  }
}

/**
 * Present output over what is expected of the same days. Where a fault lasts to the end, only its days count; days of faults that are
 * over do not.
 *
 * @param overall Output over expected of all days, where no single days were measured.
 * @param lasting Slow weather widens the interval; how sure the estimate is does not, as the share is one of the estimate.
 */
export function performanceOf(
  { presentDays, presentLevel, mendedLevel }: CollectedSigns,
  overall: number,
  correlation: number,
  lasting: LastingSpread,
): Performance {
  const hasDays = presentDays.length > 0
  const present = hasDays ? presentLevel : overall
  const spread = Math.hypot(weatherSpread(presentDays, correlation), lasting.slowWeather)
  return {
    present,
    mended: hasDays ? Math.max(mendedLevel, present) : overall,
    values: {
      performance_pct: 100 * present,
      performance_low_pct: 100 * present * Math.max(0, 1 - TO_P90 * spread),
      performance_high_pct: 100 * present * (1 + TO_P90 * spread),
    },
  }
}

/** Days of the year that is looked ahead. */
const YEAR_DAYS = 365

/**
 * The twelve months after the last measured day, once at the present level and once at the mended one.
 *
 * @param usdPerKwh What a kWh more is worth; undefined where the bill is not known.
 * @limits A system that was low from the first day counts as mended at the level of the estimate. The season of a fault (shade, snow) is
 *   not known: its level is carried through the year.
 */
export function mendedProjection(
  model: DayModel,
  lastDay: number,
  { present, mended }: Performance,
  usdPerKwh: Dollars | undefined,
): MendedProjection {
  let expected = 0
  for (let day = lastDay + 1; day <= lastDay + YEAR_DAYS; day += 1) {
    expected += kindsOfDay(model, day).reduce((sum, kwh) => sum + kwh, 0) / KIND_COUNT
  }
  return {
    to: dateText(lastDay + YEAR_DAYS),
    expected_kwh: expected,
    as_is_kwh: present * expected,
    mended_kwh: mended * expected,
    mending_worth_usd: usdPerKwh === undefined ? null : (mended - present) * expected * usdPerKwh,
  }
}
