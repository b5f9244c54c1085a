export type { ServiceLoad } from './load-answer.js'
export { serviceLoad } from './service-load.js'
