import { nodeCrypto } from './node-crypto.js'

/** SHA-256 in hexadecimal; each part goes in with its length, so that no two lists of parts give the same bytes. */
export function digestOf(parts: readonly string[]): string {
  const hash = nodeCrypto().createHash('sha256')
  for (const part of parts) hash.update(`${Buffer.byteLength(part)}:`).update(part)
  return hash.digest('hex')
}

/** SHA-256 of a text or file, in hexadecimal, as other programs give it. */
export function sha256Of(data: string | Uint8Array): string {
  return nodeCrypto().createHash('sha256').update(data).digest('hex')
}
