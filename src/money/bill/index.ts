export { billAcrossRates, type DatedSheet, type ProratedBillValues } from './bill-across-rates.js'
export type { BillLineValues, BillValues, BillYearValues } from './bill-values.js'
export { billYearOf, computeBill } from './compute-bill.js'
export { computeSavings, type SavingsValues } from './compute-savings.js'
export { houseLedgers, yearLedgers, type HouseEnergy, type HouseLedgers, type YearLedgers } from './house-energy.js'
export type { AfterStorage, HouseStorage } from './house-storage.js'
export { layHours } from './hour-layout.js'
export { billFromPeriods } from './period-bill.js'
export {
  gridAround,
  savingsReader,
  curveThrough,
  savingsAt,
  savingsCurve,
  scaledCurve,
  type SavingsCurve,
  type SavingsCurveInput,
} from './savings-curve.js'
export { noBanks, priceBill, type Banks, type Bill } from './price-bill.js'
export { billValues, toNumber } from './bill-values.js'
export { priceYear } from './bill-year.js'
export { statedLedger, type StatedEnergy, type StatedKwh } from './stated-bill.js'
export type { BillLedger } from './ledger.js'
