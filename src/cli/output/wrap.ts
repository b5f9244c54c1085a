const WIDE =
  /[\u1100-\u115F\u2E80-\u303E\u3041-\u33FF\u3400-\u4DBF\u4E00-\u9FFF\uA000-\uA4CF\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE4F\uFF00-\uFF60\uFFE0-\uFFE6\u{1F300}-\u{1FAFF}\u{20000}-\u{3FFFD}]/u

/** Latin letters, punctuation, arrows, signs of arithmetic: a column each, and no mark that stands over another among them. */
const NARROW = /^[ -~\u00A0-\u02FF\u2010-\u2027\u2030-\u205E\u2070-\u20CF\u2100-\u2BFF]*$/u

// Compiling the class of all marks takes milliseconds, so only a text that may hold one does it.
let marks: RegExp | undefined

/** Columns that a text without escape sequences takes on a terminal. */
export function displayWidth(text: string): number {
  if (NARROW.test(text)) return text.length
  marks ??= /\p{M}|\u200D/u
  let width = 0
  for (const character of text) width += marks.test(character) ? 0 : WIDE.test(character) ? 2 : 1
  return width
}

/**
 * Breaks text into lines of at most `width` columns, at spaces where possible; a longer word is cut, never lost, behind a
 * point or a stroke of it where one stands far enough on.
 */
export function wrapText(text: string, width: number): string[] {
  return text.split('\n').flatMap((line) => wrapLine(line, Math.max(1, width)))
}

function wrapLine(line: string, width: number): string[] {
  const lines: string[] = []
  let current = ''
  for (const word of line.split(/ +/u)) {
    const joined = current === '' ? word : `${current} ${word}`
    if (displayWidth(joined) <= width) {
      current = joined
      continue
    }
    if (current !== '') lines.push(current)
    const pieces = cutWord(word, width)
    lines.push(...pieces.slice(0, -1))
    current = pieces.at(-1) ?? ''
  }
  lines.push(current)
  return lines
}

function cutWord(word: string, width: number): string[] {
  const pieces: string[] = []
  let piece = ''
  for (const character of word) {
    if (piece !== '' && displayWidth(piece + character) > width) {
      const joint = Math.max(piece.lastIndexOf('.'), piece.lastIndexOf('/'), piece.lastIndexOf('_')) + 1
      const end = joint * 3 > piece.length ? joint : piece.length
      pieces.push(piece.slice(0, end))
      piece = piece.slice(end)
    }
    piece += character
  }
  return [...pieces, piece]
}

/** Wraps with `first` before the first line and spaces of the same width before the others. */
export function hang(first: string, text: string, width: number): string[] {
  const indent = displayWidth(first)
  return wrapText(text, width - indent).map((line, index) => (index === 0 ? first : ' '.repeat(indent)) + line)
}
