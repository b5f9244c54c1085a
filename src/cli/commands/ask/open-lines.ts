import { createInterface } from 'node:readline'
import { wrapText } from '../../output/wrap.js'
import { writeErr } from '../../streams.js'
import type { Lines } from './ask-all.js'

/** Lines of the keyboard or of a pipe; questions go to stderr, as stdout may take the file. */
export function openLines(): Lines & { readonly close: () => void } {
  const isTerminal = process.stdin.isTTY === true && process.stderr.isTTY === true
  const reader = createInterface({ input: process.stdin, output: process.stderr, terminal: isTerminal })
  const lines = reader[Symbol.asyncIterator]()
  // The system ends the program, as it does without questions; nothing is written before the last answer.
  reader.on('SIGINT', () => {
    reader.close()
    writeErr('\n')
    process.kill(process.pid, 'SIGINT')
  })
  const columns = process.stderr.columns ?? 80
  return {
    say: (text) =>
      writeErr(
        `${wrapText(text, Math.min(columns, 100) - 2)
          .map((line) => `  ${line}`)
          .join('\n')}\n`,
      ),
    next: async (prompt) => {
      reader.setPrompt(wrapText(prompt.trimEnd(), Math.min(columns, 100) - 12).join('\n   ') + ' ')
      reader.prompt()
      const { done, value } = await lines.next()
      if (!isTerminal) writeErr('\n')
      return done === true ? undefined : value
    },
    close: () => reader.close(),
  }
}
