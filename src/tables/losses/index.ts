export { LOSS_DEFAULTS, type LossDefault } from './defaults.js'
export { EXCEEDANCE_Z, UNCERTAINTY, type UncertaintyTerm } from './uncertainty.js'
