export { canonicalJson } from './canonical-json.js'
export { isWhole, sealed, sealOf } from './seal.js'
export { digestOf } from './digest.js'
