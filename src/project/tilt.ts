import { StageError } from '../worksheet/index.js'
import { degreesOf, INCHES_PER_FOOT, type Degrees } from '../values/index.js'
import type { RoofPlane } from './project-types.generated.js'

/** Two statements of one slope may differ by this much, degrees: a pitch is read in whole inches. */
const AGREEMENT_DEG = 0.5

/**
 * Slope of a roof plane from level, degrees, from whichever way the project states it.
 *
 * @param where Path of the plane, for what is told: `roof_planes.south`.
 * @throws StageError when neither is stated, or both are and differ by more than half a degree; a loaded project has one.
 */
export function tiltDegOf(plane: Pick<RoofPlane, 'tilt_deg' | 'pitch_in_12'>, where = 'roof_planes'): Degrees {
  const { tilt_deg: tiltDeg, pitch_in_12: pitchIn12 } = plane
  const fromPitchDeg = pitchIn12 === undefined ? undefined : degreesOf(Math.atan2(pitchIn12, INCHES_PER_FOOT))
  if (tiltDeg !== undefined && fromPitchDeg !== undefined && Math.abs(tiltDeg - fromPitchDeg) > AGREEMENT_DEG)
    throw new StageError(
      `${where}.tilt_deg`,
      `tilt_deg ${tiltDeg} and pitch_in_12 ${pitchIn12} (${fromPitchDeg.toFixed(1)} degrees) do not agree`,
      'State only one of them.',
    )
  const statedDeg = tiltDeg ?? fromPitchDeg
  if (statedDeg !== undefined) return statedDeg
  throw new StageError(
    where,
    'the slope of the roof plane is not stated',
    'State tilt_deg, or pitch_in_12: lay a level 12 in long on the rafter or shingles and measure the rise at its end.',
  )
}
