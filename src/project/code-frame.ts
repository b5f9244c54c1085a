import { markedLine } from '../report/index.js'
import { linesFrom } from '../values/index.js'
import type { Problem } from './problem.js'

const LINES_BEFORE = 2
const WIDTH = 100

/**
 * The line that a problem points at with the two lines before it and a caret under the span.
 *
 * @returns undefined when the problem has no place in the text.
 */
export function formatCodeFrame(text: string, problem: Problem): string | undefined {
  if (problem.line === undefined) return undefined
  const first = Math.max(1, problem.line - LINES_BEFORE)
  const lines = linesFrom(text, first, problem.line)
  const line = lines[problem.line - first]
  if (line === undefined) return undefined
  const column = Math.min(problem.column ?? 1, line.length + 1)
  const hidden = Math.max(0, column - WIDTH + 20)
  const numberWidth = String(problem.line).length
  const shown = lines.map((content, i) => {
    const cut = markedLine(content.replaceAll('\t', ' '), true).slice(hidden, hidden + WIDTH)
    return `  ${String(first + i).padStart(numberWidth)} | ${cut}`.trimEnd()
  })
  const start = column - 1 - hidden
  const carets = Math.max(1, Math.min(problem.length ?? 1, line.length - column + 1, WIDTH - start))
  return [...shown, `  ${' '.repeat(numberWidth)} | ${' '.repeat(start)}${'^'.repeat(carets)}`].join('\n')
}
