import type { RoofPlane } from './project-types.generated.js'

const DEG_PER_RAD = 180 / Math.PI

/**
 * Slope of a roof plane from level, degrees, from whichever way the project states it.
 *
 * @throws Error when neither is stated; a loaded project has one.
 */
export function tiltDegOf(plane: Pick<RoofPlane, 'tilt_deg' | 'pitch_in_12'>): number {
  if (plane.tilt_deg !== undefined) return plane.tilt_deg
  if (plane.pitch_in_12 === undefined) throw new Error('a roof plane without a slope has passed the check')
  return Math.atan2(plane.pitch_in_12, 12) * DEG_PER_RAD
}
