import { FileError } from '../../../files/index.js'
import { UsageError } from '../../errors.js'

/** Longest line of a pipe, bytes; an answer has far fewer, and a pipe may never give an end of a line. */
const LONGEST_LINE = 100_000

/**
 * Lines of a pipe, each read when it is asked for; what is left without a line feed at its end is one too.
 *
 * @throws FileError when a line does not end, UsageError when it is no UTF-8 text.
 */
export async function* pipedLines(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<string, undefined> {
  let rest: Uint8Array = new Uint8Array(0)
  for await (const chunk of chunks) {
    rest = rest.length === 0 ? chunk : Buffer.concat([rest, chunk])
    for (let end = rest.indexOf(LINE_FEED); end >= 0; end = rest.indexOf(LINE_FEED)) {
      const line = textOf(rest.subarray(0, end))
      rest = rest.subarray(end + 1)
      yield line
    }
    if (rest.length > LONGEST_LINE) {
      const says = `it gives a line of more than ${LONGEST_LINE / 1000} kB; an answer stands on a line of its own`
      throw new FileError(`cannot read the answers from stdin: ${says}`)
    }
  }
  if (rest.length > 0) yield textOf(rest)
  return undefined
}

const LINE_FEED = 10

function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw new UsageError('what stdin gives is not UTF-8 text')
  }
}
