import type { SkyBrightness, SkyModel } from '../sun/index.js'
import type { SkySteps } from './sky-steps.js'

/** The diffuse sky by step, shared by every plane under it; see SkyBrightness. */
export interface SkyLight {
  readonly disc: Float64Array
  readonly dome: Float64Array
  readonly horizon: Float64Array
}

/** Works the sky model out for each step. */
export function skyLight(steps: SkySteps, model: SkyModel): SkyLight {
  const { length } = steps
  const light = { disc: new Float64Array(length), dome: new Float64Array(length), horizon: new Float64Array(length) }
  const sky: SkyBrightness = { disc: 0, dome: 0, horizon: 0 }
  const instant = { dniWM2: 0, dhiWM2: 0, extraterrestrialWM2: 0, airMass: 0, zenithRad: 0, cosZenith: 0 }
  for (let step = 0; step < length; step += 1) {
    instant.dniWM2 = steps.dniWM2[step]!
    instant.dhiWM2 = steps.dhiWM2[step]!
    instant.extraterrestrialWM2 = steps.extraterrestrialWM2[step]!
    instant.airMass = steps.airMass[step]!
    instant.zenithRad = steps.zenithRad[step]!
    instant.cosZenith = steps.sunUp[step]!
    model(sky, instant)
    light.disc[step] = sky.disc
    light.dome[step] = sky.dome
    light.horizon[step] = sky.horizon
  }
  return light
}
