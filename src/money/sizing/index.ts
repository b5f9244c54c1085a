export { chooseSize } from './choose-size.js'
export type { SizePicks } from './pick-sizes.js'
export type { ChooseSizeInput, ChooseSizeValues, SizeCandidate, SizeRow } from './size-types.js'
export { whatChanges, type LineChange } from './what-changes.js'
