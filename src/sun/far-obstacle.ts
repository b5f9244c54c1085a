import type { Direction, Point } from './direction.js'
import { RADIANS_PER_DEGREE, type Degrees, type Feet } from '../values/index.js'

/** An upright rectangle that faces the array, such as a tree or a house. */
export interface FarObstacle {
  /** Direction from the array to its middle, degrees clockwise from true north. */
  readonly bearingDeg: Degrees
  readonly distanceFt: Feet
  readonly widthFt: Feet
  /** Heights of its top and of its lower edge above the array, ft. */
  readonly topFt: Feet
  readonly baseFt: Feet
  /** Share of light that passes, twelve months. */
  readonly transmittance: readonly number[]
}

/** Whether a far obstacle stands in the line from a point towards a light source. */
export function isBehindObstacle(obstacle: FarObstacle, from: Point, towards: Direction): boolean {
  const forwardEast = Math.sin(obstacle.bearingDeg * RADIANS_PER_DEGREE)
  const forwardNorth = Math.cos(obstacle.bearingDeg * RADIANS_PER_DEGREE)
  const approach = towards.east * forwardEast + towards.north * forwardNorth
  const gap = obstacle.distanceFt - (from.east * forwardEast + from.north * forwardNorth)
  if (approach <= 1e-9 || gap <= 0) return false
  const reach = gap / approach
  const across =
    from.east * forwardNorth -
    from.north * forwardEast +
    reach * (towards.east * forwardNorth - towards.north * forwardEast)
  if (Math.abs(across) > obstacle.widthFt / 2) return false
  const height = from.up + reach * towards.up
  return height >= obstacle.baseFt && height <= obstacle.topFt
}
