export type { ServiceLoad } from './load-answer.js'
export { loadValues } from './load-values.js'
export { serviceLoad } from './service-load.js'
