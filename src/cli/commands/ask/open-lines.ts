import { createInterface } from 'node:readline'
import { wrapText } from '../../output/wrap.js'
import { writeErr } from '../../streams.js'
import type { Lines } from './ask-all.js'
import { pipedLines } from './piped-lines.js'

/** Lines of the keyboard or of a pipe; questions go to stderr, as stdout may take the file. */
export function openLines(): Lines & { readonly close: () => void } {
  const columns = process.stderr.columns ?? 80
  const source = process.stdin.isTTY && process.stderr.isTTY ? fromKeyboard() : fromPipe()
  return {
    say: (text) =>
      writeErr(
        `${wrapText(text, Math.min(columns, 100) - 2)
          .map((line) => `  ${line}`)
          .join('\n')}\n`,
      ),
    next: (prompt) => source.next(wrapText(prompt.trimEnd(), Math.min(columns, 100) - 12).join('\n   ') + ' '),
    close: source.close,
  }
}

type Source = Pick<Lines, 'next'> & { readonly close: () => void }

function fromKeyboard(): Source {
  const reader = createInterface({ input: process.stdin, output: process.stderr, terminal: true })
  const lines = reader[Symbol.asyncIterator]()
  // The system ends the program, as it does without questions; nothing is written before the last answer.
  reader.on('SIGINT', () => {
    reader.close()
    writeErr('\n')
    process.kill(process.pid, 'SIGINT')
  })
  return {
    next: async (prompt) => {
      reader.setPrompt(prompt)
      reader.prompt()
      const { done, value } = await lines.next()
      return done === true ? undefined : value
    },
    close: () => reader.close(),
  }
}

function fromPipe(): Source {
  const lines = pipedLines(process.stdin as AsyncIterable<Buffer>)
  return {
    next: async (prompt) => {
      writeErr(prompt)
      try {
        const { value } = await lines.next()
        return value
      } finally {
        // Also what is wrong with the pipe stands on a line of its own.
        writeErr('\n')
      }
    },
    // What the pipe would give further is not waited for.
    close: () => void process.stdin.destroy(),
  }
}
