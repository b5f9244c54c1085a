export { LATERAL_INCREASE_LIMIT_PCT, PRESCRIPTIVE_ROOF_DEAD_PSF } from './existing-lateral.js'
export { GRAVITY_INCREASE_LIMIT_PCT, ROOF_LIVE_LOAD_PSF } from './existing-roof.js'
export { RAFTER_SPANS_LIVE_20, type RafterSpanRow } from './rafter-spans.js'
