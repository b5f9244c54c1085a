export { billsOfProject } from './bills-of-project.js'
export type { SizeLimit } from './find-limits.js'
export { paybackOfProject, type PaybackOptions } from './payback-of-project.js'
export { sizesOfProject, type ProjectSizeValues, type SizeOptions } from './sizes-of-project.js'
