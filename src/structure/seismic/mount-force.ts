import {
  DEAD_AGAINST_EARTHQUAKE,
  EARTHQUAKE_COMBINATIONS,
  VERTICAL_SHARE,
  type LoadEdition,
} from '../../tables/asce7/index.js'
import { radiansOf, type Degrees, type Pounds, type PoundsPerSquareFoot, type SquareFeet } from '../../values/index.js'

/** One mount in an earthquake. */
export interface ShakenMount {
  readonly edition: LoadEdition
  /** Ground snow at allowable level although the maps of the edition are at strength level. */
  readonly snowIsAllowable: boolean
  readonly sdsG: number
  /** Fp / Wp. */
  readonly perWeight: number
  readonly tiltDeg: Degrees
  /** Of the array that hangs on the mount: weight, surface area, and snow on the horizontal. */
  readonly weightLb: Pounds
  readonly areaFt2: SquareFeet
  readonly snowPsf: PoundsPerSquareFoot
}

/** Loads on a mount, allowable stress level. */
export interface MountForce {
  /** 0.7 Fp, horizontal. */
  readonly horizontalLb: Pounds
  /** Down the slope, with weight and snow. */
  readonly alongLb: Pounds
  /** Resultant in the plane of the roof when the earthquake acts along the eave. */
  readonly acrossLb: Pounds
  /** Away from the roof; 0 when the weight holds it. */
  readonly upliftLb: Pounds
}

/**
 * Loads of an earthquake on one mount: D + 0.7E, D + 0.525E with snow, and 0.6D - 0.7E, each with 0.2 SDS up or down.
 *
 * @source ASCE 7 2.4.5 and 13.3.1 (secondary); the force is horizontal and is resolved to the slope by statics
 */
export function mountForce(mount: ShakenMount): MountForce {
  const { perWeight, weightLb, tiltDeg, snowPsf, areaFt2 } = mount
  const [cos, sin] = [Math.cos(radiansOf(tiltDeg)), Math.sin(radiansOf(tiltDeg))]
  const { alone, withSnow, snow } = factorsOf(mount)
  const pushLb = perWeight * weightLb
  const liftLb = VERTICAL_SHARE * mount.sdsG * weightLb
  const inPlane = (factor: number, snowFactor: number) => {
    const downLb = (weightLb + factor * liftLb) * sin + snowFactor * snowPsf * areaFt2 * cos * sin
    return { alongLb: downLb + factor * pushLb * cos, acrossLb: Math.hypot(downLb, factor * pushLb) }
  }
  const cases = [inPlane(alone, 0), inPlane(withSnow, snow)]
  const upliftLb = alone * (pushLb * sin + liftLb * cos) - DEAD_AGAINST_EARTHQUAKE * weightLb * cos
  return {
    horizontalLb: alone * pushLb,
    alongLb: Math.max(...cases.map((one) => one.alongLb)),
    acrossLb: Math.max(...cases.map((one) => one.acrossLb)),
    upliftLb: Math.max(0, upliftLb),
  }
}

/** Snow at allowable level with 7-22 takes the larger factor of the older editions, which is the safe side. */
function factorsOf({ edition, snowIsAllowable }: ShakenMount): (typeof EARTHQUAKE_COMBINATIONS)['ASCE 7-16'] {
  return EARTHQUAKE_COMBINATIONS[edition === 'ASCE 7-22' && snowIsAllowable ? 'ASCE 7-16' : edition]
}
