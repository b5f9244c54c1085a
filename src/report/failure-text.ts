import type { StageError } from '../worksheet/index.js'
import { errnoWords } from './errno.js'
import { cleanLine, cleanText } from './sanitise.js'

/**
 * Why a stage cannot run, and what to do, on two lines.
 *
 * @param place Where its path stands, `project.yaml:12:7`; undefined when that is not known.
 */
export function stageErrorText({ where, message, fix }: StageError, place: string | undefined): string {
  const found = [place, where, message].filter((part) => part !== undefined && part !== '').join(': ')
  return cleanText(`${found}\n  fix: ${fix}`)
}

/**
 * Nothing that we expected: one line, or the stack for whoever asks.
 *
 * @param withStack Whether somebody asks.
 */
export function defectText(error: unknown, withStack: boolean): string {
  if (withStack) return cleanText(error instanceof Error ? (error.stack ?? '') : '')
  const message = errnoWords(error) ?? (error instanceof Error ? error.message : String(error))
  return `defect in gablewatt: ${cleanLine(message)}; run again with GABLEWATT_DEBUG=1 to see the stack`
}
