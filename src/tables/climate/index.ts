export { RADIATION_LIMITS } from './radiation-limits.js'
export { DECOMPOSITION, GAP_LIMITS, SERIES_LIMITS, SUM_LIMITS } from './series-limits.js'
export { SITE_TABLE } from './sites.js'
export {
  DESIGN_SOURCE,
  EXTREME_LOW_ESTIMATE_SOURCE,
  FLAGGED_SITE_SOURCE,
  HIGH_2PCT_ESTIMATE_SOURCE,
  LAPSE_RATE_K_PER_M,
  LAPSE_RATE_SOURCE,
  TYPICAL_YEAR_SOURCE,
} from './sources.js'
