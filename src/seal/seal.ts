import { writeCanonical } from './canonical-json.js'
import { nodeCrypto } from './node-crypto.js'

/*
 * A seal shows that a file is what the program wrote: damage, a slip of the hand, a merge gone wrong. It is no signature;
 * whoever changes a file on purpose can put a new seal on it.
 */

/** Characters that go into a digest together. */
const AT_ONCE = 65_536

/** `sha256:` and the hexadecimal digest of the canonical JSON of a value. */
export function sealOf(value: unknown): string {
  const hash = nodeCrypto().createHash('sha256')
  let waiting = ''
  writeCanonical(value, (piece) => {
    waiting += piece
    if (waiting.length < AT_ONCE) return
    hash.update(waiting)
    waiting = ''
  })
  return `sha256:${hash.update(waiting).digest('hex')}`
}

/** The data with their seal as the last key. */
export function sealed<Data extends object>(data: Data): Data & { readonly seal: string } {
  return { ...data, seal: sealOf(data) }
}

/** Whether the seal of the data is that of all else in them. */
export function isWhole(data: Readonly<Record<string, unknown>>): boolean {
  const { seal, ...rest } = data
  try {
    return seal === sealOf(rest)
  } catch (error) {
    if (error instanceof RangeError) return false
    throw error
  }
}
