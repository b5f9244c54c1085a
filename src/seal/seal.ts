import { canonicalJson } from './canonical-json.js'
import { sha256Of } from './digest.js'

/*
 * A seal shows that a file is what the program wrote: damage, a slip of the hand, a merge gone wrong. It is no signature;
 * whoever changes a file on purpose can put a new seal on it.
 */

/** `sha256:` and the hexadecimal digest of the canonical JSON of a value. */
export function sealOf(value: unknown): string {
  return `sha256:${sha256Of(canonicalJson(value))}`
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
