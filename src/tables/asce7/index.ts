export { LOAD_COMBINATIONS, ROOF_COMBINATIONS, type LoadCombination } from './combinations.js'
export type { Exposure, LoadEdition } from './edition.js'
export { PRESSURE_COEFFICIENTS, type PressureCoefficientRow } from './pressure-coefficients.js'
export { EXPOSED_EDGE_RULES, ROOFTOP_SOLAR, STEEP_HIP_7_16, type ExposedEdgeRule } from './rooftop-solar.js'
export {
  FLAT_ROOF_SNOW,
  LOW_SLOPE_SNOW,
  MAX_GROUND_SNOW_PSF,
  SNOW_EXPOSURE,
  SNOW_IMPORTANCE,
  SNOW_SLOPE_LINES,
  SNOW_THERMAL,
  type RoofExposure,
  type ThermalCondition,
} from './snow.js'
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
