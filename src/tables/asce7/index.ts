export { LOAD_COMBINATIONS, type LoadCombination } from './combinations.js'
export type { Exposure, LoadEdition } from './edition.js'
export { PRESSURE_COEFFICIENTS, type PressureCoefficientRow } from './pressure-coefficients.js'
export { EXPOSED_EDGE_RULES, ROOFTOP_SOLAR, STEEP_HIP_7_16, type ExposedEdgeRule } from './rooftop-solar.js'
export {
  FLAT_ROOF_SNOW,
  LOW_SLOPE_SNOW,
  MAX_GROUND_SNOW_PSF,
  SNOW_EXPOSURE,
  SNOW_IMPORTANCE,
  SLOPE_LINE_THERMAL,
  SNOW_SLOPE_LINES,
  SNOW_THERMAL,
  type RoofExposure,
  type SlopeFactorLine,
  type ThermalCondition,
} from './snow.js'
export {
  ALLOWABLE_OF_STRENGTH_SNOW,
  DRIFT_HEIGHT,
  DRIFT_RULES,
  ICE_DAM,
  MINIMUM_SNOW_CAP_7_22_PSF,
  NO_DRIFTS_7_22,
  PARTIAL_SHARE,
  RAIN_SLOPE_DIVISOR,
  SLIDING_SNOW,
  SLIPPERY_FROM_R,
  SNOW_DENSITY,
  SNOW_RULES,
  UNBALANCED_SNOW,
  VALLEY_OVER_PSF,
  WINTER_WIND,
  type SnowRules,
} from './snow-cases.js'
export { INSULATED_ROOF_GROUND_PSF, INSULATED_ROOF_THERMAL, THERMAL_7_22 } from './snow-thermal-7-22.js'
export {
  DIRECTIONALITY,
  ELEVATION_EXPONENT_PER_FT,
  EXPOSURE_B_FLOOR,
  EXPOSURE_CONSTANTS,
  INTERNAL_PRESSURE_ENCLOSED,
  LEAST_PRESSURE_PSF,
  LOWEST_HEIGHT_FT,
  PRESSURE_PER_SPEED_SQUARED,
  VELOCITY_PRESSURE_PLACE,
} from './velocity-pressure.js'
