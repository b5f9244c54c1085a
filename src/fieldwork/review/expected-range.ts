import type { LastingSpread } from './spread.js'
import type { ExpectedRange } from './review-values.js'
import { quantileKwh, shareBelow, type SumDistribution } from './sum-distribution.js'
import type { KilowattHours } from '../../values/index.js'

/** The 80 % ranges of a sum. @param lasting What no further day makes smaller. */
export function expectedRange(distribution: SumDistribution, lasting: LastingSpread): ExpectedRange {
  const spread = Math.hypot(lasting.method, lasting.slowWeather)
  return {
    mean_kwh: distribution.meanKwh,
    weather_p10_kwh: quantileKwh(distribution, 0.1),
    weather_p90_kwh: quantileKwh(distribution, 0.9),
    p10_kwh: quantileKwh(distribution, 0.1, spread),
    p90_kwh: quantileKwh(distribution, 0.9, spread),
    method_uncertainty_pct: 100 * lasting.method,
    slow_weather_pct: 100 * lasting.slowWeather,
  }
}

/** Percentile of a measured sum among what a good system may give, 0 to 100. */
export function percentileOf(distribution: SumDistribution, kwh: KilowattHours, spread: number): number {
  return Math.min(100, Math.max(0, 100 * shareBelow(distribution, kwh, spread)))
}

/** A sum without weather luck. */
export function certainSum(kwh: KilowattHours): SumDistribution {
  return { lowestKwh: kwh, stepKwh: Math.max(1e-9, kwh * 1e-9), probability: new Float64Array([1]), meanKwh: kwh }
}
