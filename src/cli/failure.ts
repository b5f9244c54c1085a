import { CommanderError } from 'commander'
import type { LoadedProject, ProjectError } from '../project/index.js'
import { StageError } from '../worksheet/index.js'
import { EXIT, type ExitCode } from './exit-codes.js'
import { DesignError, FileError, UsageError } from './errors.js'
import { errnoWords } from './output/errno.js'
import { cleanLine, cleanText } from './output/sanitise.js'
import { placeText } from './place-text.js'

/** An error as the person sees it. `text` is for stderr, '' when commander has said it already. */
export interface Failure {
  readonly exitCode: ExitCode
  readonly text: string
}

/** Turns whatever was thrown into a message and the exit code. */
export function explainFailure(error: unknown, loaded: LoadedProject | undefined): Failure {
  if (error instanceof CommanderError) return { exitCode: error.exitCode === 0 ? EXIT.done : EXIT.usage, text: '' }
  if (error instanceof UsageError) {
    const lines = [error.message, ...error.more].map((message) => `error: ${cleanLine(message)}\n`)
    return { exitCode: EXIT.usage, text: lines.join('') }
  }
  if (error instanceof DesignError) return { exitCode: EXIT.checkFailed, text: cleanText(`error: ${error.message}\n`) }
  if (error instanceof FileError) return { exitCode: EXIT.file, text: `error: ${cleanLine(error.message)}\n` }
  if (isProjectError(error)) {
    const count = error.problems.length
    const last = `error: ${count} problem${count === 1 ? '' : 's'}; nothing was computed`
    return { exitCode: error.exitCode, text: `${cleanText(error.format({ frames: true }))}\n${last}\n` }
  }
  if (error instanceof StageError) {
    const place = loaded === undefined ? undefined : placeText(loaded, error.where)
    const where = [place, error.where, error.message].filter((part) => part !== undefined && part !== '').join(': ')
    return { exitCode: EXIT.usage, text: cleanText(`error: ${where}\n  fix: ${error.fix}\n`) }
  }
  return explainDefect(error)
}

/** Nothing that we expected: one line, and the stack only for whoever asks. */
export function explainDefect(error: unknown): Failure {
  const message = errnoWords(error) ?? (error instanceof Error ? error.message : String(error))
  const stack = error instanceof Error ? (error.stack ?? '') : ''
  const debug = (process.env['GABLEWATT_DEBUG'] ?? '') !== ''
  return {
    exitCode: EXIT.defect,
    text: debug
      ? `${cleanText(stack)}\n`
      : `defect in gablewatt: ${cleanLine(message)}; run again with GABLEWATT_DEBUG=1 to see the stack\n`,
  }
}

/** By name, so that a run that reads no project loads no YAML reader. */
function isProjectError(error: unknown): error is ProjectError {
  return error instanceof Error && error.name === 'ProjectError'
}
