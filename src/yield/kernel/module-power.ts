import type { Real } from './memory.js'

/** DC power of a module at the rated conditions, W; see `modulePowerW`, which asks the same of a model. */
export function powerOf(pmax: Real, perK: Real, slope: Real, irradiance: Real, cell: Real): Real {
  if (irradiance <= 0) return 0
  const dim = slope === 0 ? 1 : Math.max(0, 1 + slope * Math.log(irradiance / 1000))
  const power = pmax * (irradiance / 1000) * dim * (1 + perK * (cell - 25))
  return power > 0 ? power : 0
}
