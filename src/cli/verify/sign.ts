import { existsSync } from 'node:fs'
import { basename } from 'node:path'
import { FileError } from '../../files/index.js'
import { LARGEST_YAML_BYTES, readNamedText } from '../../project/index.js'
import {
  fingerprintOf,
  isSignedBy,
  KeyTrouble,
  readKey,
  readSignature,
  sha256Of,
  signFile,
  type FileSignature,
} from '../../seal/index.js'
import type { OutputFile } from '../subcommand.js'

/** What is known of the signature of a file. */
export interface SignatureCheck {
  /** Where the signature is. */
  readonly file: string
  /** Fingerprint of the key that was given, or that the signature file names. */
  readonly key: string
  readonly standing: 'good' | 'bad' | 'not checked'
  readonly says: string
}

/** Where the signature of a file lies. */
export const signaturePath = (path: string): string => `${path}.sig`

/** @throws FileError when the key cannot be used. */
export function signatureOf(path: string, bytes: Uint8Array, keyPath: string): { file: OutputFile; key: string } {
  const key = keyFrom(keyPath, 'private')
  const signature = signFile(basename(path), bytes, key)
  const content = `${JSON.stringify(signature, undefined, 1)}\n`
  return { file: { path: signaturePath(path), content }, key: signature.key }
}

/**
 * Holds the signature beside a file against a public key.
 *
 * @param keyPath Undefined when none was given: then it is only told that there is a signature.
 * @returns undefined when there is neither signature nor key.
 * @throws FileError when key or signature cannot be read.
 */
export function checkSignature(
  path: string,
  bytes: Uint8Array,
  keyPath: string | undefined,
): SignatureCheck | undefined {
  const file = signaturePath(path)
  if (keyPath === undefined && !existsSync(file)) return undefined
  const key = keyPath === undefined ? undefined : keyFrom(keyPath, 'public')
  const signature = readSignature(readNamedText(file, LARGEST_YAML_BYTES))
  if (signature === undefined) throw new FileError(`${file} is no signature; verify-file --sign writes one`)
  if (key === undefined) {
    const says = 'there is a signature; --key PUB checks it with the key of whom you believe it to be'
    return { file, key: signature.key, standing: 'not checked', says }
  }
  const fingerprint = fingerprintOf(key)
  if (isSignedBy(bytes, signature, key)) {
    const says = 'whoever holds the private key of this public key signed exactly these bytes'
    return { file, key: fingerprint, standing: 'good', says }
  }
  return { file, key: fingerprint, standing: 'bad', says: whyBad(bytes, signature, fingerprint) }
}

function whyBad(bytes: Uint8Array, { key, sha256 }: FileSignature, fingerprint: string): string {
  if (key !== fingerprint) return `it was made with another key, ${key}`
  if (sha256 !== sha256Of(bytes)) return 'the file has changed since it was signed'
  return 'the signature itself is damaged'
}

function keyFrom(path: string, kind: 'private' | 'public') {
  try {
    return readKey(readNamedText(path, LARGEST_YAML_BYTES), kind)
  } catch (error) {
    if (!(error instanceof KeyTrouble)) throw error
    throw new FileError(`cannot use ${path}: ${error.message}`, { cause: error })
  }
}
