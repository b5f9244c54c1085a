export { kwhDecimal, microKwh, splitMicroKwh } from './micro-kwh.js'
