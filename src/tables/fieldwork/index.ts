export { SAFETY_FIGURES, TEST_LIMITS } from './commissioning-limits.js'
export { DAY_CORRELATION } from './day-correlation.js'
export { BAYES_SOURCE, CALIBRATION } from './calibration.js'
export { INSULATION_FACTOR, INSULATION_SOURCE, INSULATION_TESTS, type InsulationTest } from './insulation-tests.js'
export { REVIEW_SOURCE, REVIEW_THRESHOLDS } from './review-thresholds.js'
export { REVIEW_DESIGN, REVIEW_DESIGN_SOURCE } from './review-design.js'
export { READING_CELL_C, SERVICE_VOLTAGE_BAND, WORK_SOURCES } from './work-sources.js'
export {
  COMMISSIONING_TESTS,
  ENERGISING_ORDER,
  SWITCH_OFF_ORDER,
  type CommissioningTest,
  type SwitchingStep,
} from './commissioning-order.js'
export { MAINTENANCE, type MaintenanceRule } from './maintenance.js'
