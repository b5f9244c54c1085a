export { payback, annualOutput, yearScales, type PaybackInput } from './payback.js'
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
