export { chooseSize } from './choose-size.js'
export type { ChooseSizeInput, ChooseSizeValues, SizeCandidate, SizePicks, SizeRow } from './size-types.js'
export { whatChanges, type LineChange } from './what-changes.js'
export {
  storageSizes,
  storageUsd,
  type StorageChoice,
  type StorageSizeRow,
  type StorageSizesValues,
} from './storage-sizes.js'
