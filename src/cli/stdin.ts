import { UsageError } from './errors.js'

/** More than any project file; what is longer is cut here and refused by the reader of projects. */
const MOST_BYTES = 4_000_000

/**
 * Reads standard input to its end, whether it is a file, a pipe or a socket.
 *
 * @throws UsageError when it is a terminal, where nobody knows that we wait, or no UTF-8 text.
 */
export async function readStdin(): Promise<string> {
  if (process.stdin.isTTY) throw new UsageError('stdin is a terminal: pipe a project file in, or name one')
  const chunks: Buffer[] = []
  let length = 0
  for await (const chunk of process.stdin as AsyncIterable<Buffer>) {
    chunks.push(chunk)
    length += chunk.length
    if (length > MOST_BYTES) break
  }
  try {
    return new TextDecoder('utf-8', { fatal: length <= MOST_BYTES }).decode(Buffer.concat(chunks))
  } catch {
    throw new UsageError('what stdin gives is not UTF-8 text')
  }
}
