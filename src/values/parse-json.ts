/** Levels of maps and lists in a JSON text. Files of this program and of rates have ten; a deep one fills the stack of whoever walks it. */
export const DEEPEST_JSON = 100

/** Keys of one map: as many as a fleet has houses. Seven million of them take 26 s and 1.5 GB. */
export const MOST_JSON_KEYS = 500_000

/** A text is JSON, yet more of it than anybody means. */
export class TooMuchJson extends SyntaxError {
  /** Said of a file: `has more than 9 commas`, `is nested deeper`. */
  get ofFile(): string {
    return `${this.message.startsWith('nested') ? 'is' : 'has'} ${this.message}`
  }
}

/** A text is JSON that two readers may take for different things, so that none of them is to be believed. */
export class DoubtfulJson extends SyntaxError {
  /** As this reader would take it. */
  readonly data: unknown

  constructor(message: string, data: unknown) {
    super(message)
    this.data = data
  }
}

/**
 * Reads JSON of a file that may come from anybody.
 *
 * @param most Most brackets, commas and colons; each may stand for a value that takes 100 bytes and more.
 * @throws TooMuchJson when it is nested deeper than 100 levels or has more of those; DoubtfulJson when a map has a key twice or a
 *   number is beyond what a number can be; SyntaxError when it is no JSON.
 */
export function parseJson(text: string, most = Infinity): unknown {
  const colons = checkJson(text, most)
  const data: unknown = JSON.parse(text)
  const found = countKeys(data)
  if (found.isBeyond) throw new DoubtfulJson('with a number beyond 1.8e308, the largest there is', data)
  // Each key has its colon; of two that are the same only the last is kept.
  if (found.keys !== colons) throw new DoubtfulJson('with a key twice in one map', data)
  return data
}

/**
 * Whether a text is within those bounds, without reading it.
 *
 * @returns Its colons, one for each key.
 * @throws TooMuchJson as above.
 */
export function checkJson(text: string, most: number): number {
  let depth = 0
  let marks = 0
  let colons = 0
  /** Keys of the maps that are open, by depth. */
  const keys: number[] = []
  let inText = false
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at)
    if (inText) {
      if (code === BACKSLASH) at += 1
      else if (code === QUOTE) inText = false
    } else if (code === QUOTE) inText = true
    else if (code === OPEN_LIST || code === OPEN_MAP) {
      depth += 1
      marks += 1
      keys[depth] = 0
      if (depth > DEEPEST_JSON) throw new TooMuchJson(`nested more than ${DEEPEST_JSON} levels deep`)
    } else if (code === CLOSE_LIST || code === CLOSE_MAP) depth -= 1
    else if (code === COMMA) marks += 1
    else if (code === COLON) {
      colons += 1
      marks += 1
      keys[depth] = (keys[depth] ?? 0) + 1
      if (keys[depth]! > MOST_JSON_KEYS) throw new TooMuchJson(`more than ${MOST_JSON_KEYS} keys in one map`)
    }
    if (marks > most) throw new TooMuchJson(`more than ${most} brackets, commas and colons`)
  }
  return colons
}

/** Keys of all maps, and whether a number was too large for one, which JSON written anew would call `null`. */
function countKeys(data: unknown): { readonly keys: number; readonly isBeyond: boolean } {
  let keys = 0
  let isBeyond = false
  const left: unknown[] = [data]
  while (left.length > 0) {
    const value = left.pop()
    if (typeof value === 'number') isBeyond ||= !Number.isFinite(value)
    else if (Array.isArray(value)) for (const item of value) left.push(item)
    else if (typeof value === 'object' && value !== null) {
      for (const item of Object.values(value)) {
        keys += 1
        left.push(item)
      }
    }
  }
  return { keys, isBeyond }
}

const [QUOTE, BACKSLASH, COMMA, COLON] = [0x22, 0x5c, 0x2c, 0x3a]
const [OPEN_LIST, CLOSE_LIST, OPEN_MAP, CLOSE_MAP] = [0x5b, 0x5d, 0x7b, 0x7d]
