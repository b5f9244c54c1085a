export { OWN_USE, type Battery, type ChargeFrom, type Control, type HouseSteps } from './battery.js'
export { dispatch, type StorageFlows } from './dispatch.js'
export { leastCost, type PlanLimits, type StepPrices } from './optimum.js'
