import { EXIT } from './exit-codes.js'
import { errnoWords } from '../report/index.js'

/** The one place that writes to stdout and stderr. Text that arrives here is clean already. */
export function writeOut(content: string | Uint8Array): void {
  process.stdout.write(content)
}

export function writeErr(text: string): void {
  process.stderr.write(text)
}

/**
 * What to do when nobody reads any more. A reader that has seen enough (`| head`) is no error and gets no message; a
 * full disk behind `> file` is one.
 */
export function watchStreams(): void {
  process.stdout.on('error', (error) => {
    if (!('code' in error && error.code === 'EPIPE')) {
      writeErr(`error: cannot write to stdout: ${errnoWords(error) ?? error.message}\n`)
      process.exit(EXIT.file)
    }
    process.exit()
  })
  process.stderr.on('error', () => process.exit())
}
