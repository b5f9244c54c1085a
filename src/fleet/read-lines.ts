import { readSync } from 'node:fs'

/** Where a line stands in a file, bytes, without its line feed. */
export interface Line {
  readonly offset: number
  readonly length: number
}

/** The whole lines of an open file from its beginning; what follows the last line feed is left out. */
export function* readLines(file: number): Generator<Line & { readonly text: string }> {
  const buffer = Buffer.alloc(65_536)
  let rest: Buffer = Buffer.alloc(0)
  let offset = 0
  let position = 0
  for (;;) {
    const read = readSync(file, buffer, 0, buffer.length, position)
    if (read === 0) return
    position += read
    rest = Buffer.concat([rest, buffer.subarray(0, read)])
    for (let end = rest.indexOf(10); end >= 0; end = rest.indexOf(10)) {
      yield { offset, length: end, text: rest.toString('utf8', 0, end) }
      rest = rest.subarray(end + 1)
      offset += end + 1
    }
  }
}
