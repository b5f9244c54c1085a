export { LOSS_DEFAULTS, type LossDefault } from './defaults.js'
export { EXCEEDANCE_Z, METHOD_ERROR, METHOD_SOURCE, UNCERTAINTY, type UncertaintyTerm } from './uncertainty.js'
