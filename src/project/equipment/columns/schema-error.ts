export type { ErrorObject } from '../../schema-error.js'
