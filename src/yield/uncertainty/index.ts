export { yieldUncertainty } from './exceedance.js'
export { AGE_TERM, SNOW_TERM, WEATHER_TERMS, YEARLY_TERM, type UncertainArray, type UncertaintyBasis } from './terms.js'
export type { Exceedance, UncertaintyTermValue, YieldUncertainty } from './uncertainty-values.js'
