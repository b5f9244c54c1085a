export {
  BENDING_PSI,
  BENDING_SIZE_FACTOR,
  bendingSource,
  LOWEST_USUAL_GRADE,
  REPETITIVE,
  SOUTHERN_PINE_BENDING_PSI,
  WET_BENDING,
  type LumberGrade,
} from './bending-values.js'
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
export { LUMBER_SIZES, type NominalSize } from './lumber.js'
export { SPECIFIC_GRAVITY } from './specific-gravity.js'
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
