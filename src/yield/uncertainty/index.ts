export { yieldUncertainty } from './exceedance.js'
export { AGE_TERM, YEARLY_TERM, type UncertainArray, type UncertaintyBasis } from './terms.js'
export type { Exceedance, UncertaintyTermValue, YieldUncertainty } from './uncertainty-values.js'
