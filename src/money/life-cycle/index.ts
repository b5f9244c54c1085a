export {
  compareAlternatives,
  lifeCycleCost,
  type Alternative,
  type Comparison,
  type CostInYear,
  type LifeCycleCost,
} from './compare-alternatives.js'
export {
  modifiedUniformPresentValue,
  singlePresentValue,
  uniformCapitalRecovery,
  uniformPresentValue,
  type FlowTiming,
} from './factors.js'
export { internalRate, modifiedInternalRate, type InternalRate } from './internal-rate.js'
export { adjustedInternalRate, levelisedCost, netFlows, savingsToInvestment, type InvestmentFlows } from './measures.js'
export { paybackYears, type PaybackYears } from './payback-years.js'
export { cumulativePresentValues, netPresentValue } from './present-value.js'
export { impliedInflation, monthlyRate, nominalRate, realRate } from './rate-conversion.js'
