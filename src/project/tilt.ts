import type { RoofPlane } from './project-types.generated.js'
import { INCHES_PER_FOOT, degreesOf, type Degrees } from '../values/index.js'

/**
 * Slope of a roof plane from level, degrees, from whichever way the project states it.
 *
 * @throws Error when neither is stated; a loaded project has one.
 */
export function tiltDegOf(plane: Pick<RoofPlane, 'tilt_deg' | 'pitch_in_12'>): Degrees {
  if (plane.tilt_deg !== undefined) return plane.tilt_deg
  if (plane.pitch_in_12 === undefined) throw new Error('a roof plane without a slope has passed the check')
  return degreesOf(Math.atan2(plane.pitch_in_12, INCHES_PER_FOOT))
}
