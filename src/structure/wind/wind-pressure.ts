import { INTERNAL_PRESSURE_ENCLOSED, LEAST_PRESSURE_PSF } from '../../tables/asce7/index.js'
import { StageError } from '../../worksheet/index.js'
import { pressureCoefficient, type RoofShape } from './pressure-coefficient.js'
import { arrayEdgeFactor, solarEqualisation } from './solar-factors.js'
import type { PoundsPerSquareFoot, SquareFeet } from '../../values/index.js'

/**
 * Largest effective wind area that coefficients are read at, ft2. Above it the coefficients fall faster than the area
 * grows, so that a part carrying more roof would seem to need less; no mount or rail span of a house reaches it.
 */
export const LARGEST_AREA_FT2 = 36

/** Wind on one plane, ready for any zone and area. */
export interface WindOnPlane {
  readonly shape: RoofShape
  /** Velocity pressure with Kd, psf, strength level. */
  readonly velocityPressurePsf: PoundsPerSquareFoot
}

/**
 * Wind pressure at right angles to modules that lie parallel to the roof, psf, strength level.
 *
 * 7-16 and 7-22 take p = qh GCp gammaE gammaa; 7-10, which has no clause for modules, the components and cladding of the
 * roof with internal pressure. Never less than 16 psf.
 *
 * @param areaFt2 Effective wind area of the part that is checked, ft2, over 0.
 * @param exposed Whether the place lies in the strip along an exposed array edge.
 * @returns psf, positive in the stated direction.
 * @throws StageError when no figure covers the roof.
 * @source ASCE 7-16 and 7-22 eq. 29.4-7; ASCE 7-10 eq. 30.4-1; least pressure 30.2.2 (secondary)
 */
export function windPressurePsf(
  wind: WindOnPlane,
  zone: string,
  areaFt2: SquareFeet,
  exposed: boolean,
  direction: 'uplift' | 'down',
): PoundsPerSquareFoot {
  const area = Math.min(areaFt2, LARGEST_AREA_FT2)
  const size = sizeOfCoefficient(wind, zone, area, direction)
  const pressure =
    wind.shape.edition === 'ASCE 7-10'
      ? wind.velocityPressurePsf * (size + INTERNAL_PRESSURE_ENCLOSED)
      : wind.velocityPressurePsf * size * arrayEdgeFactor(exposed) * solarEqualisation(area)
  return Math.max(pressure, LEAST_PRESSURE_PSF)
}

function sizeOfCoefficient(wind: WindOnPlane, zone: string, areaFt2: SquareFeet, direction: 'uplift' | 'down'): number {
  const coefficient = pressureCoefficient(wind.shape, zone, areaFt2, direction)
  if (coefficient === undefined) {
    throw new StageError(
      'structure.building.roof_kind',
      `${wind.shape.edition} has no pressure coefficients here for a ${wind.shape.roofKind} roof of ${wind.shape.tiltDeg.toFixed(1)} degrees (zone ${zone})`,
      'Ask a structural engineer for the wind loads.',
    )
  }
  return Math.abs(coefficient.value)
}

/**
 * Wind pressure on the roof itself beside the modules, psf, strength level: components and cladding with internal pressure of an
 * enclosed house.
 *
 * @param areaFt2 Effective wind area of the part, ft2, over 0.
 * @throws StageError when no figure covers the roof.
 * @source ASCE 7-10 eq. 30.4-1, 7-16 and 7-22 eq. 30.3-1; least pressure 30.2.2 (secondary)
 * @limits Roof overhangs have higher coefficients, which are not held.
 */
export function bareRoofPressurePsf(
  wind: WindOnPlane,
  zone: string,
  areaFt2: SquareFeet,
  direction: 'uplift' | 'down',
): PoundsPerSquareFoot {
  const size = sizeOfCoefficient(wind, zone, Math.min(areaFt2, LARGEST_AREA_FT2), direction)
  return Math.max(wind.velocityPressurePsf * (size + INTERNAL_PRESSURE_ENCLOSED), LEAST_PRESSURE_PSF)
}
