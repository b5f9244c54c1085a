/** Levels of maps and lists in a JSON text. Files of this program and of rates have ten; a deep one fills the stack of whoever walks it. */
export const DEEPEST_JSON = 100

/** A text is JSON, yet more of it than anybody means. */
export class TooMuchJson extends SyntaxError {
  /** Said of a file: `has more than 9 commas`, `is nested deeper`. */
  get ofFile(): string {
    return `${this.message.startsWith('nested') ? 'is' : 'has'} ${this.message}`
  }
}

/**
 * Reads JSON of a file that may come from anybody.
 *
 * @param most Most brackets, commas and colons; each may stand for a value that takes 100 bytes and more.
 * @throws TooMuchJson when it is nested deeper than 100 levels or has more of those; SyntaxError when it is no JSON.
 */
export function parseJson(text: string, most = Infinity): unknown {
  checkJson(text, most)
  return JSON.parse(text)
}

/** Whether a text is within those bounds, without reading it. @throws TooMuchJson as above. */
export function checkJson(text: string, most: number): void {
  let depth = 0
  let marks = 0
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
      if (depth > DEEPEST_JSON) throw new TooMuchJson(`nested more than ${DEEPEST_JSON} levels deep`)
    } else if (code === CLOSE_LIST || code === CLOSE_MAP) depth -= 1
    else if (code === COMMA || code === COLON) marks += 1
    if (marks > most) throw new TooMuchJson(`more than ${most} brackets, commas and colons`)
  }
}

const [QUOTE, BACKSLASH, COMMA, COLON] = [0x22, 0x5c, 0x2c, 0x3a]
const [OPEN_LIST, CLOSE_LIST, OPEN_MAP, CLOSE_MAP] = [0x5b, 0x5d, 0x7b, 0x7d]
