export { OWN_USE, type Battery, type ChargeFrom, type Control, type HouseSteps } from './battery.js'
export { calendarRate, cycleRate } from './cell-model.js'
export { dispatch, type StorageFlows } from './dispatch.js'
export { afterYear, NEW, type Aged, type Fade, type YearOfUse } from './fade.js'
export {
  storageLife,
  warrantyEndAt,
  type ReplaceWhen,
  type StorageLife,
  type StorageYear,
  type Warranty,
  type WarrantyLimit,
  type YearRun,
} from './lifetime.js'
export { leastCost, type PlanLimits, type StepPrices } from './optimum.js'
export { LONGEST_OUTAGE_H, outageHours, type EssentialSteps } from './outage.js'
export { rainflow } from './rainflow.js'
export { yearOfUse, yearSums, type YearSums } from './year-of-use.js'
