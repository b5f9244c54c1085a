export { payback, annualOutput } from './payback.js'
export type { BatteryInput, PaybackInput } from './payback-input.js'
export { yearScales } from './year-scales.js'
export type {
  CashFlowRowValues,
  ContractValues,
  ExceedanceValues,
  PaybackValues,
  PaybackYearsValues,
  SensitivityValues,
  UncertaintyValues,
} from './payback-values.js'
export { paybackMeaning } from './payback-meaning.js'
export { paybackYearsValues } from './report-values.js'
export { worthOf, type Worth } from './worth.js'
export { batteryYears, withBattery, withReplacements } from './battery-years.js'
