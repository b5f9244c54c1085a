export { decimal, Decimal, smaller, sum, toCents, ZERO } from './decimal.js'
