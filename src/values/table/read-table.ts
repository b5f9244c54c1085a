import { commonestDelimiter, outsideQuotes } from './delimiter.js'
import { linesOf } from './lines.js'
import { readRows, type TakesLine } from './read-rows.js'
import { tooManyBadRows, tooManyRows } from './row-problems.js'
import { MOST_BAD_ROWS, MOST_CELLS, MOST_HEAD_LINES } from './table-bounds.js'
import type { TableCell, TableProblem, TableRow } from './table-row.js'

/** A table of measurements: its header, the rows that are well written, and what is wrong with the others. */
export interface Table {
  readonly delimiter: string
  readonly header: readonly TableCell[]
  readonly rows: readonly TableRow[]
  readonly problems: readonly TableProblem[]
}

/** A table whose rows are read each time that somebody asks for them, as a long one has millions. */
export interface OpenTable {
  readonly delimiter: string
  readonly header: readonly TableCell[]
  /** What is wrong with the line of the header. */
  readonly problem: TableProblem | undefined
  /**
   * The rows that are well written.
   *
   * @param bad Takes what is wrong with each of the others.
   * @param takes Is offered each line without a quote, the header left out.
   */
  readonly rows: (bad: (problem: TableProblem) => void, takes?: TakesLine) => Generator<TableRow>
}

/**
 * Reads a table whose every row has the cells of its header. Blanks round cells, empty rows and empty cells beyond the
 * header are dropped; any other row with more or fewer cells is a problem, for nobody knows what its cells are.
 *
 * @param text The whole file.
 * @param mostRows Rows below the header that are read; one more is a problem, and the last.
 * @param delimiter Character between columns; the one that the header holds most often when undefined.
 * @param headerLine Line of the column names, counted from 1; the first with two or more cells when undefined.
 * @returns undefined when no line can be a header, among the first 10,000 where its line is not stated.
 */
export function readTable(text: string, mostRows: number, delimiter?: string, headerLine?: number): Table | undefined {
  const table = openTable(text, mostRows, delimiter, headerLine)
  if (table === undefined) return undefined
  const problems: TableProblem[] = table.problem === undefined ? [] : [table.problem]
  const rows = [...table.rows((problem) => problems.push(problem))]
  return { delimiter: table.delimiter, header: table.header, rows, problems }
}

/** Such a table without its rows. */
export function openTable(
  text: string,
  mostRows: number,
  delimiter?: string,
  headerLine?: number,
): OpenTable | undefined {
  const found = findHeader(text, delimiter, headerLine)
  if (found === undefined) return undefined
  const options = { delimiter: found.delimiter, firstLine: found.line, trim: true }
  const first = readRows([text], options).next()
  if (first.done === true) return undefined
  // More of them are a problem of their own; what compares each with each takes too long then.
  const header = withoutEmptyEnd(first.value.cells()).slice(0, MOST_CELLS)
  return {
    delimiter: found.delimiter,
    header,
    problem: first.value.problem,
    rows: function* rows(bad, takes) {
      let isHeader = true
      let [count, badCount] = [0, 0]
      // The row after the last that may be is left for below, which tells of it.
      const after: TakesLine | undefined =
        takes &&
        ((line, number) => {
          if (isHeader || count >= mostRows || !takes(line, number)) return false
          count += 1
          return true
        })
      for (const row of readRows([text], after === undefined ? options : { ...options, takes: after })) {
        if (isHeader) {
          isHeader = false
          continue
        }
        count += 1
        if (count > mostRows) {
          bad(tooManyRows(row.line, mostRows))
          return
        }
        const problem = row.problem ?? shapeProblem(row, header, found.delimiter)
        if (problem !== undefined) {
          badCount += 1
          bad(badCount > MOST_BAD_ROWS ? tooManyBadRows(row.line) : problem)
          if (badCount > MOST_BAD_ROWS) return
        } else if (row.texts.some((cell) => cell !== '')) yield row
      }
    },
  }
}

function findHeader(
  text: string,
  delimiter: string | undefined,
  headerLine: number | undefined,
): { readonly line: number; readonly delimiter: string } | undefined {
  let line = 0
  for (const { text: content } of linesOf([text])) {
    line += 1
    if (headerLine === undefined ? line > MOST_HEAD_LINES : line < headerLine) {
      if (headerLine === undefined) return undefined
      continue
    }
    if (headerLine === undefined && content === '') continue
    const between = delimiter ?? commonestDelimiter(content)
    if (content.trim() !== '' && (headerLine !== undefined || outsideQuotes(content).includes(between)))
      return { line, delimiter: between }
    if (headerLine !== undefined) return undefined
  }
  return undefined
}

function withoutEmptyEnd(cells: readonly TableCell[]): readonly TableCell[] {
  return cells.slice(0, cells.findLastIndex((cell) => cell.text !== '') + 1)
}

function shapeProblem(row: TableRow, header: readonly TableCell[], delimiter: string): TableProblem | undefined {
  const { texts } = row
  if (texts.length !== header.length) {
    if (texts.every((text) => text === '')) return undefined
    const beyond = texts.findIndex((text, i) => i >= header.length && text !== '')
    if (texts.length < header.length || beyond >= 0) {
      const { line, column } = row.cell(beyond < 0 ? texts.length - 1 : beyond) ?? { line: row.line, column: 1 }
      const hint = beyond < 0 ? '' : `; a cell that holds '${delimiter}' stands in quotes`
      const message = `the row has ${texts.length} cells, the header ${header.length}${hint}`
      return { line, column, message }
    }
  }
  const swallowing = texts.findIndex((text) => text.includes('\n') && holdsRow(text, header.length, delimiter))
  if (swallowing < 0) return undefined
  const { line, column } = row.cell(swallowing) ?? { line: row.line, column: 1 }
  return { line, column, message: 'the cell in quotes that begins here holds whole rows; is its quote closed?' }
}

/** Whether a line inside a cell has as many cells as a row of the table: two stray quotes make a cell of what stands between. */
function holdsRow(text: string, columns: number, delimiter: string): boolean {
  return text
    .split('\n')
    .slice(1)
    .some((line) => line.split(delimiter).length >= columns)
}
