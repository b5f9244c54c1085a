import { sha256Of } from './digest.js'
import { nodeCrypto } from './node-crypto.js'

const FORMAT = 'gablewatt-signature/1'

/** A signature of a file, apart from it. Anybody can check it with the public key alone, over the bytes of the file. */
export interface FileSignature {
  readonly format: typeof FORMAT
  readonly algorithm: 'Ed25519'
  /** Name of the file when it was signed; it may have another now. */
  readonly file: string
  /** Of the file, hexadecimal. */
  readonly sha256: string
  /** `sha256:` of the public key in the form that others export (SubjectPublicKeyInfo, DER). */
  readonly key: string
  /** Base64. */
  readonly signature: string
}

/** A key of Ed25519 that has been read: its PEM text. */
export interface SignatureKey {
  readonly kind: 'private' | 'public'
  readonly pem: string
}

/** A key cannot be used; the message says why. */
export class KeyTrouble extends Error {}

/** @throws KeyTrouble when the text is no Ed25519 key of this kind in PEM form. */
export function readKey(pem: string, kind: SignatureKey['kind']): SignatureKey {
  if (kind === 'public' && /PRIVATE KEY/u.test(pem)) {
    throw new KeyTrouble('it holds a private key; give the public one, and keep this one to yourself')
  }
  let type: string | undefined
  try {
    type = (kind === 'private' ? nodeCrypto().createPrivateKey(pem) : nodeCrypto().createPublicKey(pem))
      .asymmetricKeyType
  } catch {
    throw new KeyTrouble(`it is no ${kind} key in PEM form, or one under a passphrase`)
  }
  if (type === 'ed25519') return { kind, pem }
  throw new KeyTrouble(`it is a key of another kind (${type ?? 'unknown'}); wanted is Ed25519`)
}

/** `sha256:` and the fingerprint of the public part of a key. */
export function fingerprintOf({ pem }: SignatureKey): string {
  return `sha256:${sha256Of(nodeCrypto().createPublicKey(pem).export({ type: 'spki', format: 'der' }))}`
}

/** @source RFC 8032, Ed25519 over the bytes as they are; the algorithm is Node's. */
export function signFile(name: string, bytes: Uint8Array, key: SignatureKey): FileSignature {
  return {
    format: FORMAT,
    algorithm: 'Ed25519',
    file: name,
    sha256: sha256Of(bytes),
    key: fingerprintOf(key),
    signature: nodeCrypto().sign(null, bytes, key.pem).toString('base64'),
  }
}

/** @returns undefined when the text is no signature file. */
export function readSignature(text: string): FileSignature | undefined {
  let data: unknown
  try {
    data = JSON.parse(text)
  } catch {
    return undefined
  }
  if (typeof data !== 'object' || data === null) return undefined
  const { format, algorithm, file, sha256, key, signature } = data as Partial<FileSignature>
  const isOne =
    format === FORMAT &&
    algorithm === 'Ed25519' &&
    [file, sha256, key, signature].every((each) => typeof each === 'string')
  return isOne ? (data as FileSignature) : undefined
}

/** Whether the key signed these bytes; what the signature file says of itself is not believed. */
export function isSignedBy(bytes: Uint8Array, { signature }: FileSignature, key: SignatureKey): boolean {
  return nodeCrypto().verify(null, bytes, key.pem, Buffer.from(signature, 'base64'))
}
