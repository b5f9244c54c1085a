export { drawCashFlows, type Samples, type Spread } from './monte-carlo.js'
export { readSpread } from './read-spread.js'
export {
  npvOf,
  sensitivity,
  sensitivityBars,
  type Curves,
  type CurveVariant,
  type SensitivityRow,
} from './sensitivity.js'
