import type { Percent, Watts } from '../values/index.js'

/** An inverter as the energy estimate sees it. */
export interface InverterModel {
  readonly acRatingW: Watts
  /** DC power at the points of the curve, W, rising; a constant efficiency has one point. */
  readonly dcW: Float64Array
  /** AC over DC at those points. */
  readonly efficiency: Float64Array
  readonly nightW: Watts
}

/** Builds the model of a constant efficiency. */
export function constantEfficiency(acRatingW: Watts, efficiencyPct: Percent, nightW: Watts): InverterModel {
  return { acRatingW, dcW: Float64Array.of(0), efficiency: Float64Array.of(efficiencyPct / 100), nightW }
}

/** Builds the model of a part-load curve, points in rising order of load. */
export function curveEfficiency(
  acRatingW: Watts,
  curve: readonly { readonly loadPct: Percent; readonly efficiencyPct: Percent }[],
  nightW: Watts,
): InverterModel {
  const efficiency = Float64Array.from(curve, (point) => point.efficiencyPct / 100)
  const dcW = Float64Array.from(curve, (point) => ((point.loadPct / 100) * acRatingW) / (point.efficiencyPct / 100))
  return { acRatingW, dcW, efficiency, nightW }
}

/**
 * AC power that the inverter would give if it had no limit; straight lines between the points of the curve, level beyond.
 *
 * @param dcW DC power at the input, W.
 * @returns W.
 */
export function unlimitedAcW(model: InverterModel, dcW: Watts): Watts {
  const { dcW: points, efficiency } = model
  const last = points.length - 1
  if (last === 0 || dcW <= points[0]!) return dcW * efficiency[0]!
  if (dcW >= points[last]!) return dcW * efficiency[last]!
  let index = 1
  while (dcW > points[index]!) index += 1
  const low = points[index - 1]!
  const share = (dcW - low) / (points[index]! - low)
  const at = efficiency[index - 1]! * (1 - share) + efficiency[index]! * share
  return dcW * at
}

/** Weights of the two usual weighted efficiencies, load in percent of the rating. */
export const EFFICIENCY_WEIGHTS = {
  /** Sandia/CEC test protocol 2004-05 (secondary). */
  cec: [
    [10, 0.04],
    [20, 0.05],
    [30, 0.12],
    [50, 0.21],
    [75, 0.53],
    [100, 0.05],
  ],
  /** European weighting (secondary). */
  european: [
    [5, 0.03],
    [10, 0.06],
    [20, 0.13],
    [30, 0.1],
    [50, 0.48],
    [100, 0.2],
  ],
} as const
