import { createHash } from 'node:crypto'

/** SHA-256 in hexadecimal; each part goes in with its length, so that no two lists of parts give the same bytes. */
export function digestOf(parts: readonly string[]): string {
  const hash = createHash('sha256')
  for (const part of parts) hash.update(`${Buffer.byteLength(part)}:`).update(part)
  return hash.digest('hex')
}
