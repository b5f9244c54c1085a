export { canonicalJson } from './canonical-json.js'
export { BUILD } from './build-id.js'
export { envelopeOf, inEnvelope, sayBuild, schemaOf, standingOf, type Envelope, type Standing } from './envelope.js'
export { isWhole, sealed, sealOf } from './seal.js'
export {
  fingerprintOf,
  isSignedBy,
  KeyTrouble,
  readKey,
  readSignature,
  signFile,
  type FileSignature,
} from './signature.js'
export { digestOf, sha256Of } from './digest.js'
