export { checkBackup, type CheckedBackup } from './check-backup.js'
export { storageValues } from './storage-values.js'
