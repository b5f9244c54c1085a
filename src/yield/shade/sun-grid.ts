import { degreesOf, RADIANS_PER_DEGREE, type Degrees } from '../../values/index.js'

/** Steps of hour angle and of declination. The sun moves 2 degrees of hour angle in 8 minutes. */
export const HOUR_STEP_DEG = 2
export const COLUMNS = 360 / HOUR_STEP_DEG
/** Beyond the sun's largest declination, degrees. */
const MOST_DECLINATION_DEG = 23.5
export const ROWS = 19
export const ROW_STEP_DEG = (2 * MOST_DECLINATION_DEG) / (ROWS - 1)
/** Places down to this height are kept: a step at sunrise lies on either side of the horizon. */
const LOWEST_UP = -0.03

/**
 * Every place where the sun can stand over a house, as a grid of declination (rows) and hour angle (columns): fine enough
 * that nothing as wide as a few degrees slips between two hours, and the same for weather of any step.
 */
export interface SunGrid {
  readonly latitudeDeg: Degrees
  /** Direction to the sun by place: `row * COLUMNS + column`. */
  readonly east: Float64Array
  readonly north: Float64Array
  readonly up: Float64Array
  /** Places that are above the horizon, or just below it. */
  readonly places: Uint16Array
}

let last: SunGrid | undefined

/** The grid of a latitude, north positive; that of the last latitude is kept. */
export function sunGrid(latitudeDeg: Degrees): SunGrid {
  if (last?.latitudeDeg === latitudeDeg) return last
  const size = ROWS * COLUMNS
  const east = new Float64Array(size)
  const north = new Float64Array(size)
  const up = new Float64Array(size)
  const places = new Uint16Array(size)
  const sinPhi = Math.sin(latitudeDeg * RADIANS_PER_DEGREE)
  const cosPhi = Math.cos(latitudeDeg * RADIANS_PER_DEGREE)
  let count = 0
  for (let row = 0; row < ROWS; row += 1) {
    const declination = (row * ROW_STEP_DEG - MOST_DECLINATION_DEG) * RADIANS_PER_DEGREE
    const [sinDelta, cosDelta] = [Math.sin(declination), Math.cos(declination)]
    for (let column = 0; column < COLUMNS; column += 1) {
      const place = row * COLUMNS + column
      const angle = ((column + 0.5) * HOUR_STEP_DEG - 180) * RADIANS_PER_DEGREE
      const cosAngle = Math.cos(angle)
      east[place] = -cosDelta * Math.sin(angle)
      north[place] = cosPhi * sinDelta - sinPhi * cosDelta * cosAngle
      up[place] = sinPhi * sinDelta + cosPhi * cosDelta * cosAngle
      if (up[place] > LOWEST_UP) {
        places[count] = place
        count += 1
      }
    }
  }
  last = { latitudeDeg, east, north, up, places: places.slice(0, count) }
  return last
}

/** Row of a declination, with a fraction. */
export function rowOf(declinationDeg: Degrees): number {
  const row = (declinationDeg + MOST_DECLINATION_DEG) / ROW_STEP_DEG
  return Math.min(ROWS - 1, Math.max(0, row))
}

/** Declination and hour angle of a direction, degrees. */
export function courseOf(
  latitudeDeg: Degrees,
  towards: { readonly east: number; readonly north: number; readonly up: number },
): { readonly declinationDeg: Degrees; readonly hourAngleDeg: Degrees } {
  const sinPhi = Math.sin(latitudeDeg * RADIANS_PER_DEGREE)
  const cosPhi = Math.cos(latitudeDeg * RADIANS_PER_DEGREE)
  const sinDelta = towards.up * sinPhi + towards.north * cosPhi
  return {
    declinationDeg: degreesOf(Math.asin(Math.min(1, Math.max(-1, sinDelta)))),
    hourAngleDeg: degreesOf(Math.atan2(-towards.east, towards.up * cosPhi - towards.north * sinPhi)),
  }
}
