import { FileError } from '../files/index.js'
import { UsageError } from './errors.js'

/**
 * Reads standard input to its end, whether it is a file, a pipe or a socket.
 *
 * @param most Largest length, bytes.
 * @throws UsageError when it is a terminal, where nobody knows that we wait, or no UTF-8 text.
 * @throws FileError when it gives more than `most`.
 */
export async function readStdin(most: number): Promise<string> {
  if (process.stdin.isTTY) throw new UsageError('stdin is a terminal: pipe a file in, or name one')
  const chunks: Buffer[] = []
  let length = 0
  for await (const chunk of process.stdin as AsyncIterable<Buffer>) {
    chunks.push(chunk)
    length += chunk.length
    if (length > most) throw new FileError(`cannot read stdin: it gives more than ${most / 1e6} MB`)
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks))
  } catch {
    throw new UsageError('what stdin gives is not UTF-8 text')
  }
}
