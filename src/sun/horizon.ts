import type { Degrees } from '../values/index.js'

/** A point of the far horizon. */
export interface HorizonPoint {
  readonly azimuthDeg: Degrees
  readonly elevationDeg: Degrees
}

/**
 * Height of the horizon in a direction: straight lines between the points, round the compass.
 *
 * @param points In rising order of azimuth, at least two.
 * @param azimuthDeg Degrees clockwise from true north.
 * @returns Degrees above level.
 */
export function horizonElevationDeg(points: readonly HorizonPoint[], azimuthDeg: Degrees): Degrees {
  const azimuth = ((azimuthDeg % 360) + 360) % 360
  const last = points.length - 1
  for (let index = 0; index <= last; index += 1) {
    const from = points[index]!
    const to = points[index === last ? 0 : index + 1]!
    const end = index === last ? to.azimuthDeg + 360 : to.azimuthDeg
    const at = azimuth < from.azimuthDeg ? azimuth + 360 : azimuth
    if (at >= from.azimuthDeg && at <= end && end > from.azimuthDeg) {
      const share = (at - from.azimuthDeg) / (end - from.azimuthDeg)
      return from.elevationDeg * (1 - share) + to.elevationDeg * share
    }
  }
  return points[0]!.elevationDeg
}
