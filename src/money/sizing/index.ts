export {
  chooseSize,
  type ChooseSizeInput,
  type ChooseSizeValues,
  type SizeCandidate,
  type SizeRow,
} from './choose-size.js'
export type { SizePicks } from './pick-sizes.js'
export { whatChanges, type LineChange } from './what-changes.js'
