export { DAY_SHAPE_TABLE } from './day-shapes.js'
export { EXTRA_SITE_TABLE } from './extra-sites.js'
export { RADIATION_LIMITS } from './radiation-limits.js'
export { BLENDED_SITING_ERROR_PCT, NEAREST_SITE_ERROR_PCT, type ClimateRegion } from './siting-error.js'
export { DECOMPOSITION, GAP_LIMITS, SERIES_LIMITS, SUM_LIMITS } from './series-limits.js'
export { SITE_TABLE } from './sites.js'
export { SNOWFALL_TABLE } from './snowfall.js'
export {
  DESIGN_SOURCE,
  EXTREME_LOW_ESTIMATE_SOURCE,
  FLAGGED_SITE_SOURCE,
  HIGH_2PCT_ESTIMATE_SOURCE,
  LAPSE_RATE_K_PER_M,
  LAPSE_RATE_SOURCE,
  DAY_SHAPE_SOURCE,
  SITING_SOURCE,
  SNOWFALL_SOURCE,
  TYPICAL_YEAR_SOURCE,
} from './sources.js'
