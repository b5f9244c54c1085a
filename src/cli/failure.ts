import { CommanderError } from 'commander'
import { FileError } from '../files/index.js'
import type { ProjectError } from '../project/index.js'
import { cleanLine, cleanText, defectText, stageErrorText } from '../report/index.js'
import { StageError } from '../worksheet/index.js'
import { EXIT, type ExitCode } from './exit-codes.js'
import { DesignError, UsageError } from './errors.js'

/** An error as the person sees it. `text` is for stderr, '' when commander has said it already. */
export interface Failure {
  readonly exitCode: ExitCode
  readonly text: string
}

/**
 * Turns whatever was thrown into a message and the exit code.
 *
 * @param locate Says where a path of the project stands.
 * @param next A command that helps on when a stage cannot run.
 */
export function explainFailure(error: unknown, locate?: (path: string) => string | undefined, next?: string): Failure {
  if (error instanceof CommanderError) return { exitCode: error.exitCode === 0 ? EXIT.done : EXIT.usage, text: '' }
  if (error instanceof UsageError) {
    const lines = [error.message, ...error.more].map((message) => `error: ${cleanLine(message)}\n`)
    return { exitCode: EXIT.usage, text: lines.join('') }
  }
  if (error instanceof DesignError) return { exitCode: EXIT.checkFailed, text: cleanText(`error: ${error.message}\n`) }
  if (error instanceof FileError) return { exitCode: error.exitCode, text: `error: ${cleanLine(error.message)}\n` }
  if (isProjectError(error)) {
    const count = error.problems.length
    const last = `error: ${count} problem${count === 1 ? '' : 's'}; nothing was computed`
    return { exitCode: error.exitCode, text: `${cleanText(error.format({ frames: true }))}\n${last}\n` }
  }
  if (error instanceof StageError) {
    const hint = next === undefined ? '' : `  next: ${cleanLine(next)}\n`
    return { exitCode: EXIT.usage, text: `error: ${stageErrorText(error, locate?.(error.where))}\n${hint}` }
  }
  const withStack = (process.env['GABLEWATT_DEBUG'] ?? '') !== ''
  return { exitCode: EXIT.defect, text: `${defectText(error, withStack)}\n` }
}

/** By name, so that a run that reads no project loads no YAML reader. */
function isProjectError(error: unknown): error is ProjectError {
  return error instanceof Error && error.name === 'ProjectError'
}
