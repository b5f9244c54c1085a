export { GRAVITY_INCREASE_LIMIT_PCT, ROOF_LIVE_LOAD_PSF } from './existing-roof.js'
export { RAFTER_SPANS_LIVE_20, type RafterSpanRow } from './rafter-spans.js'
