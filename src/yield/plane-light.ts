import {
  ashraeModifier,
  cosDeg,
  effectiveGroundAngleDeg,
  effectiveSkyAngleDeg,
  physicalModifier,
  planeAxes,
  type SkySplit,
} from '../sun/index.js'
import type { ModelSettings } from './settings.js'
import type { SkySteps } from './sky-steps.js'

/**
 * Light on an unshaded plane, step by step, W/m2. `*In` is what gets through the glass, relative to straight incidence.
 * Direct is beam and circumsolar together: what an obstacle in front of the sun takes away.
 */
export interface PlaneLight {
  readonly direct: Float64Array
  readonly sky: Float64Array
  readonly ground: Float64Array
  readonly directIn: Float64Array
  readonly skyIn: Float64Array
  readonly groundIn: Float64Array
}

/**
 * Light on a plane of any direction.
 *
 * @param steps The sky.
 * @param tiltDeg From level, degrees.
 * @param azimuthDeg Degrees clockwise from true north.
 * @param settings Sky model, incidence model, albedo.
 * @source Duffie & Beckman ch. 2.14 to 2.16 (isotropic ground); the sky model named in the settings.
 */
export function planeLight(steps: SkySteps, tiltDeg: number, azimuthDeg: number, settings: ModelSettings): PlaneLight {
  const { normal } = planeAxes(tiltDeg, azimuthDeg)
  const { east, north, up } = normal
  const sinTilt = Math.sqrt(Math.max(0, 1 - up * up))
  const groundView = (1 - up) / 2
  const modifier = modifierOf(settings)
  const skyModifier = modifier(cosDeg(effectiveSkyAngleDeg(tiltDeg)))
  const groundModifier = modifier(cosDeg(effectiveGroundAngleDeg(tiltDeg)))
  const length = steps.length
  const light: PlaneLight = {
    direct: new Float64Array(length),
    sky: new Float64Array(length),
    ground: new Float64Array(length),
    directIn: new Float64Array(length),
    skyIn: new Float64Array(length),
    groundIn: new Float64Array(length),
  }
  const split: SkySplit = { circumsolar: 0, dome: 0, horizon: 0 }
  const instant = { dniWM2: 0, dhiWM2: 0, extraterrestrialWM2: 0, airMass: 0, cosZenith: 0, cosIncidence: 0 }
  for (let step = 0; step < length; step += 1) {
    const sunUp = steps.sunUp[step] as number
    const cosIncidence = (steps.sunEast[step] as number) * east + (steps.sunNorth[step] as number) * north + sunUp * up
    const dhi = steps.dhiWM2[step] as number
    const dni = steps.dniWM2[step] as number
    instant.dniWM2 = dni
    instant.dhiWM2 = dhi
    instant.extraterrestrialWM2 = steps.extraterrestrialWM2[step] as number
    instant.airMass = steps.airMass[step] as number
    instant.cosZenith = sunUp
    instant.cosIncidence = cosIncidence
    settings.sky(split, instant, up, sinTilt)
    const direct = (cosIncidence > 0 ? dni * cosIncidence : 0) + dhi * split.circumsolar
    const skyLight = Math.max(0, dhi * (split.dome + split.horizon))
    const ground =
      (steps.ghiWM2[step] as number) * (settings.albedo[steps.month[step] as number] as number) * groundView
    light.direct[step] = direct
    light.sky[step] = skyLight
    light.ground[step] = ground
    light.directIn[step] = direct > 0 ? direct * modifier(cosIncidence) : 0
    light.skyIn[step] = skyLight * skyModifier
    light.groundIn[step] = ground * groundModifier
  }
  return light
}

function modifierOf(settings: ModelSettings): (cosIncidence: number) => number {
  switch (settings.incidence) {
    case 'physical':
      return physicalModifier
    case 'ashrae':
      return (cosIncidence) => ashraeModifier(cosIncidence, settings.ashraeB0)
    case 'none':
      return () => 1
  }
}
