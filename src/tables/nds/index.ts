export { LUMBER_VALUES, SOUTHERN_PINE_VALUES, type DesignValues, type LumberGrade } from './design-values.js'
export { LOAD_DURATION, TEMPERATURE, WET_SERVICE, type SustainedTemperature } from './factors.js'
export {
  LAG_GEOMETRY,
  LAG_ROOT_TENSION_PSI,
  LAG_SCREWS,
  LEAD_HOLES,
  SIDE_PLATES,
  type LagDimensions,
  type LagSize,
  type SidePlate,
} from './lag-screws.js'
export { isLumberGrade, lumberGrades, lumberValues } from './lumber-grades.js'
export { LUMBER_SIZES, type NominalSize } from './lumber.js'
export { SPECIFIC_GRAVITY } from './specific-gravity.js'
export {
  COLUMN_C,
  DEEPEST_END_NOTCH,
  INCISED,
  lumberSource,
  MOST_SLENDERNESS,
  REPETITIVE,
  SIZE_FACTORS,
  TEMPERATURE_ELASTICITY,
  UNBRACED_LENGTH,
  WET_LUMBER,
  type SizeFactors,
} from './wood-factors.js'
export {
  NAIL_WITHDRAWAL,
  NAIL_WITHDRAWAL_WET,
  SHEATHING_GRAVITY,
  SHEATHING_NAILS,
  SHEATHING_POINT_LOAD_LB,
  STEEL_BENDING_FACTOR,
  WOOD_SCREW_DIAMETER_IN,
  WOOD_SCREW_WITHDRAWAL,
  type SheathingKind,
  type SheathingNail,
  type WoodScrewSize,
} from './sheathing.js'
