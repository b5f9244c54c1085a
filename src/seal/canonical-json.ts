const DEEPEST = 200

/**
 * The one way to write a value as JSON: keys sorted by UTF-16 code units, no spaces, numbers and texts as ECMAScript
 * writes them, so that the same data give the same bytes whatever the order and layout of the file that they came from.
 *
 * @throws RangeError when it is nested more than 200 deep.
 * @source RFC 8785, JSON Canonicalization Scheme; from memory.
 */
export function canonicalJson(value: unknown, depth = 0): string {
  if (depth > DEEPEST) throw new RangeError('nested too deeply')
  if (Array.isArray(value)) return `[${value.map((item) => canonicalJson(item, depth + 1)).join(',')}]`
  if (typeof value === 'object' && value !== null) {
    const entries = Object.entries(value).filter(([, item]) => item !== undefined)
    const sorted = entries.toSorted(([a], [b]) => (a < b ? -1 : 1))
    return `{${sorted.map(([key, item]) => `${JSON.stringify(key)}:${canonicalJson(item, depth + 1)}`).join(',')}}`
  }
  return JSON.stringify(value) ?? 'null'
}
