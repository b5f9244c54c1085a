export {
  EACH_PLACE_KWH,
  isStorageCode,
  storageCodeRules,
  storageCodes,
  storageLimits,
  type StorageCode,
  type StorageLimit,
  type StorageLimitId,
} from './place-limits.js'
export {
  groupLimits,
  groupWords,
  storagePlaceKinds,
  storagePlaceRules,
  type StorageGroup,
  type StoragePlaceKind,
} from './storage-places.js'
export { LFP_CELL } from './lfp-cell.js'
