export { billWeights } from './bill-weights.js'
export { factorsOf, yearCurve, yearCurves, type YearChange, type YearsInput } from './year-curves.js'
export { tellYears, withPricesInCurves, yearsAhead, type YearValues } from './years-ahead.js'
