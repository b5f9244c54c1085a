export { canonicalJson } from './canonical-json.js'
export { isWhole, sealed, sealOf } from './seal.js'
export { digestOf, sha256Of } from './digest.js'
