import {
  oneCoefficientModifier,
  cosDeg,
  effectiveGroundAngleDeg,
  effectiveSkyAngleDeg,
  glassLayerModifier,
  planeAxes,
} from '../sun/index.js'
import type { ModelSettings } from './settings.js'
import type { SkyLight } from './sky-light.js'
import type { SkySteps } from './sky-steps.js'
import type { Degrees } from '../values/index.js'

/** Light on an unshaded plane, step by step, W/m2, and what of it gets through the glass. */
export interface PlaneLight {
  /** Beam and circumsolar: what an obstacle in front of the sun takes away. */
  readonly direct: Float64Array
  readonly sky: Float64Array
  readonly ground: Float64Array
  /** All three together. */
  readonly all: Float64Array
  /** Direct light that gets through the glass, relative to straight incidence. */
  readonly directIn: Float64Array
  /** Share of light from sky and ground that gets through the glass, relative to straight incidence. */
  readonly skyModifier: number
  readonly groundModifier: number
}

/**
 * Light on a plane of any direction.
 *
 * @param steps The sun and the weather.
 * @param sky The diffuse sky of these steps.
 * @param tiltDeg From level, degrees.
 * @param azimuthDeg Degrees clockwise from true north.
 * @param settings Incidence model, albedo.
 * @source Duffie & Beckman ch. 2.14 to 2.16 (isotropic ground); the sky model named in the settings.
 */
export function planeLight(
  steps: SkySteps,
  sky: SkyLight,
  tiltDeg: Degrees,
  azimuthDeg: Degrees,
  settings: ModelSettings,
): PlaneLight {
  const { east, north, up } = planeAxes(tiltDeg, azimuthDeg).normal
  const sinTilt = Math.sqrt(Math.max(0, 1 - up * up))
  const domeView = (1 + up) / 2
  const groundView = (1 - up) / 2
  const modifier = modifierOf(settings)
  const { length, sunEast, sunNorth, sunUp, dniWM2, ghiWM2, month } = steps
  const albedo = Float64Array.from(settings.albedo, (share) => share * groundView)
  const direct = new Float64Array(length)
  const skyLight = new Float64Array(length)
  const ground = new Float64Array(length)
  const all = new Float64Array(length)
  const directIn = new Float64Array(length)
  for (let step = 0; step < length; step += 1) {
    const cosIncidence = sunEast[step]! * east + sunNorth[step]! * north + sunUp[step]! * up
    const fromSky = sky.dome[step]! * domeView + sky.horizon[step]! * sinTilt
    const fromGround = ghiWM2[step]! * albedo[month[step]!]!
    let fromSun = 0
    if (cosIncidence > 0) {
      fromSun = (dniWM2[step]! + sky.disc[step]!) * cosIncidence
      direct[step] = fromSun
      directIn[step] = fromSun * modifier(cosIncidence)
    }
    const kept = fromSky > 0 ? fromSky : 0
    skyLight[step] = kept
    ground[step] = fromGround
    all[step] = fromSun + kept + fromGround
  }
  return {
    direct,
    sky: skyLight,
    ground,
    all,
    directIn,
    skyModifier: modifier(cosDeg(effectiveSkyAngleDeg(tiltDeg))),
    groundModifier: modifier(cosDeg(effectiveGroundAngleDeg(tiltDeg))),
  }
}

function modifierOf(settings: ModelSettings): (cosIncidence: number) => number {
  switch (settings.incidence) {
    case 'glass_layer':
      return glassLayerModifier
    case 'one_coefficient':
      return (cosIncidence) => oneCoefficientModifier(cosIncidence, settings.incidenceCoefficient)
    case 'none':
      return () => 1
  }
}
