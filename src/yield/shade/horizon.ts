import { horizonElevationDeg, type HorizonPoint } from '../../sun/index.js'
import { degreesOf } from '../../values/index.js'

/** Whether the far horizon hides a direction. */
export function isBelowHorizon(
  horizon: readonly HorizonPoint[],
  towards: { readonly east: number; readonly north: number; readonly up: number },
): boolean {
  if (horizon.length === 0) return false
  const azimuthDeg = degreesOf(Math.atan2(towards.east, towards.north))
  return degreesOf(Math.asin(Math.min(1, towards.up))) < horizonElevationDeg(horizon, azimuthDeg)
}
