export { yieldUncertainty, type Exceedance, type UncertaintyTermValue, type YieldUncertainty } from './exceedance.js'
export { AGE_TERM, YEARLY_TERM, type UncertainArray, type UncertaintyBasis } from './terms.js'
