export { DAY_CORRELATION } from './day-correlation.js'
export { REVIEW_SOURCE, REVIEW_THRESHOLDS } from './review-thresholds.js'
