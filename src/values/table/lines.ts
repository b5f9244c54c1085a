import { LONGEST_LINE } from './table-bounds.js'

/** A line without its line feed; `isCut` when it was too long and nothing after it is read. */
export interface Line {
  readonly text: string
  readonly isCut: boolean
}

/** A file may hold nothing else. */
const EMPTY: Line = { text: '', isCut: false }

/** The lines of a text that arrives in pieces, cut anywhere. A byte order mark before the first is dropped. */
export function* linesOf(chunks: Iterable<string>): Generator<Line> {
  let rest = ''
  let isFirst = true
  for (const chunk of chunks) {
    if (chunk === '') continue
    let text = rest + chunk
    if (isFirst && text.startsWith('\uFEFF')) text = text.slice(1)
    isFirst = false
    let at = 0
    for (let end = text.indexOf('\n'); end >= 0; end = text.indexOf('\n', at)) {
      if (end - at > LONGEST_LINE) {
        yield { text: text.slice(at, at + LONGEST_LINE), isCut: true }
        return
      }
      yield end === at ? EMPTY : { text: text.slice(at, end), isCut: false }
      at = end + 1
    }
    rest = text.slice(at)
    if (rest.length > LONGEST_LINE) {
      yield { text: rest.slice(0, LONGEST_LINE), isCut: true }
      return
    }
  }
  if (rest !== '') yield { text: rest, isCut: false }
}
