export {
  billAcrossRates,
  billFromPeriods,
  computeBill,
  computeSavings,
  savingsAt,
  savingsCurve,
  type BillLineValues,
  type BillValues,
  type BillYearValues,
  type DatedSheet,
  type HouseEnergy,
  type ProratedBillValues,
  type SavingsCurve,
  type SavingsValues,
} from './bill/index.js'
export { makeCalendar, type BillingCalendar } from './calendar/index.js'
export { readTariff, readTariffs, type RateSheet, type RateSheets } from './tariff/index.js'
export { loanPayments } from './cash-flow/index.js'
export * from './life-cycle/index.js'
export {
  payback,
  type ContractValues,
  type PaybackInput,
  type PaybackValues,
  type PaybackYearsValues,
} from './payback/index.js'
export * from './bill-check/index.js'
export * from './rates/index.js'
export type { OutageMonthValues, StorageValues, StorageYearValues } from './storage/index.js'
export * from './usage/index.js'
export * from './sizing/index.js'
export * from './house/index.js'
