import type { CollectedSigns } from './collect-signs.js'
import { weatherSpread } from './judge-days.js'
import type { MendedProjection, Projection } from './review-values.js'
import type { LastingSpread } from './spread.js'
import type { Dollars } from '../../values/index.js'

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

/**
 * The year once as it goes on now, once with everything put right today: the days that are left, at the present and at the mended level.
 *
 * @param usdPerKwh What a kWh more is worth; undefined where the bill is not known.
 * @limits A system that was low from the first day counts as mended at the level of the estimate.
 */
export function mendedProjection(
  { measured_kwh: measured, expected_rest_kwh: rest }: Projection,
  { present, mended }: Performance,
  usdPerKwh: Dollars | undefined,
): MendedProjection {
  return {
    as_is_kwh: measured + present * rest,
    mended_kwh: measured + mended * rest,
    mending_worth_usd: usdPerKwh === undefined ? null : (mended - present) * rest * usdPerKwh,
  }
}
