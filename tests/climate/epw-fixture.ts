import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

/** Public typical year of Seattle-Tacoma airport, copied whole. */
export const SEATTLE_EPW = readFileSync(
  fileURLToPath(new URL('../../examples/weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw', import.meta.url)),
  'utf8',
)

const LINES = SEATTLE_EPW.replaceAll('\r\n', '\n').trimEnd().split('\n')

/** A fresh copy of the file's lines: 8 of header, then 8760 hours. */
export function seattleLines(): string[] {
  return [...LINES]
}

/** Sets one field, line counted from 1, column from 0. */
export function setField(lines: string[], line: number, column: number, text: string): void {
  const fields = lines[line - 1]!.split(',')
  fields[column] = text
  lines[line - 1] = fields.join(',')
}

/** The file with some fields changed: [line from 1, column from 0, text]. */
export function withFields(...changes: readonly (readonly [number, number, string])[]): string {
  const lines = seattleLines()
  for (const [line, column, text] of changes) setField(lines, line, column, text)
  return lines.join('\n')
}

/** The file with a column changed in every hour. */
export function withColumn(column: number, text: (row: number) => string): string {
  const lines = seattleLines()
  for (let line = 9; line <= lines.length; line++) setField(lines, line, column, text(line - 9))
  return lines.join('\n')
}
