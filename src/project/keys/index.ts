export { aboutKey, findKeys, keyHint, writtenKey, type KeyFacts } from './about-key.js'
export { listKeys, type KnownKey } from './list-keys.js'
export type { MovedResult } from './moved-results.js'
