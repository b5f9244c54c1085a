export { Decimal, decimal, smaller, sum, toCents, ZERO } from './decimal.js'
export { kwhDecimal, microKwh, splitMicroKwh } from './micro-kwh.js'
