export { DAY_CORRELATION } from './day-correlation.js'
export { REVIEW_SOURCE, REVIEW_THRESHOLDS } from './review-thresholds.js'
export { READING_CELL_C, SERVICE_VOLTAGE_BAND, WORK_SOURCES } from './work-sources.js'
