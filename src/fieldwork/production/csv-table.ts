/** A cell with the place that a message names, counted from 1. */
export interface CsvCell {
  readonly text: string
  readonly line: number
  readonly column: number
}

export interface CsvTable {
  readonly header: readonly CsvCell[]
  readonly rows: readonly (readonly CsvCell[])[]
  readonly delimiter: string
}

const DELIMITERS = [',', ';', '\t', '|'] as const

/**
 * Splits a table into cells that know where they stand.
 *
 * @param text The whole file; either line ending, and quotes round cells with doubled quotes inside.
 * @param delimiter Character between columns; the one that the header holds most often when undefined.
 * @param headerLine Line of the column names, counted from 1; the first with two or more cells when undefined.
 * @returns undefined when no line can be a header.
 */
export function csvTable(text: string, delimiter?: string, headerLine?: number): CsvTable | undefined {
  const lines = text.split('\n')
  const candidate = (line: string): string => delimiter ?? commonest(line)
  const at =
    headerLine === undefined
      ? lines.findIndex((line) => line.trim() !== '' && line.includes(candidate(line)))
      : headerLine - 1
  const first = lines[at]
  if (first === undefined || first.trim() === '') return undefined
  const between = candidate(first)
  const records = splitRecords(text, between).filter(
    (record) => record.some((cell) => cell.text !== '') && (record[0]?.line ?? 0) > at,
  )
  const [header, ...rows] = records
  return header === undefined ? undefined : { header, rows, delimiter: between }
}

function commonest(line: string): string {
  const counts = DELIMITERS.map((each) => line.split(each).length)
  return DELIMITERS[counts.indexOf(Math.max(...counts))] ?? ','
}

function splitRecords(text: string, delimiter: string): CsvCell[][] {
  const records: CsvCell[][] = []
  let record: CsvCell[] = []
  let [line, lineStart, at] = [1, 0, text.startsWith('\uFEFF') ? 1 : 0]
  while (at <= text.length) {
    const [cellLine, cellColumn] = [line, at - lineStart + 1]
    let cell = ''
    if (text[at] === '"') {
      at += 1
      while (at < text.length) {
        if (text[at] === '"' && text[at + 1] === '"') at += 1
        else if (text[at] === '"') break
        if (text[at] === '\n') [line, lineStart] = [line + 1, at + 1]
        cell += text[at] ?? ''
        at += 1
      }
      at += 1
    }
    while (at < text.length && text[at] !== delimiter && text[at] !== '\n') {
      cell += text[at] ?? ''
      at += 1
    }
    record.push({ text: cell.trim(), line: cellLine, column: cellColumn })
    if (text[at] !== delimiter) {
      records.push(record)
      record = []
      line += 1
      lineStart = at + 1
    }
    at += 1
  }
  return records
}
