const DEEPEST = 200

/**
 * The one way to write a value as JSON: keys sorted by UTF-16 code units, no spaces, numbers and texts as ECMAScript
 * writes them, so that the same data give the same bytes whatever the order and layout of the file that they came from.
 *
 * @throws RangeError when it is nested more than 200 deep.
 * @source RFC 8785, JSON Canonicalization Scheme; from memory.
 */
export function canonicalJson(value: unknown): string {
  let text = ''
  writeCanonical(value, (piece) => (text += piece))
  return text
}

/** The same piece by piece, for what may be longer than a text can be. A piece ends nowhere within a character. */
export function writeCanonical(value: unknown, write: (piece: string) => void, depth = 0): void {
  if (depth > DEEPEST) throw new RangeError('nested too deeply')
  if (Array.isArray(value)) {
    let mark = '['
    for (const item of value) {
      write(mark)
      writeCanonical(item, write, depth + 1)
      mark = ','
    }
    write(mark === '[' ? '[]' : ']')
  } else if (typeof value === 'object' && value !== null) {
    const map = value as Readonly<Record<string, unknown>>
    let mark = '{'
    // Without pairs of key and value, as a map of a stranger may have millions.
    for (const key of Object.keys(map).toSorted()) {
      if (map[key] === undefined) continue
      write(`${mark}${JSON.stringify(key)}:`)
      writeCanonical(map[key], write, depth + 1)
      mark = ','
    }
    write(mark === '{' ? '{}' : '}')
  } else write(JSON.stringify(value) ?? 'null')
}
