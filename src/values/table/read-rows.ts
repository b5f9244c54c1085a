import { linesOf } from './lines.js'
import { loneReturn, tooManyCells } from './row-problems.js'
import { OpenRow } from './open-row.js'
import { LONGEST_LINE } from './table-bounds.js'
import { PlainRow, type TableRow } from './table-row.js'

/** How a table is written. */
export interface RowOptions {
  /** Character between the columns; a comma when missing. */
  readonly delimiter?: string
  /** Line of the first row, counted from 1; what stands above it is not looked at. */
  readonly firstLine?: number
  /** Whether blanks round a cell, also outside its quotes, are dropped; otherwise they are part of it. */
  readonly trim?: boolean
  /** Is offered each line without a quote; a line that it takes makes no row. */
  readonly takes?: TakesLine
}

/** A reader of lines of a common form. It takes only what it reads exactly as a row would be read, and nothing of a line that it leaves. */
export type TakesLine = (text: string, line: number) => boolean

const LINE_TOO_LONG = `a line of more than ${LONGEST_LINE} characters; does the file have line ends, and is every quote closed?`

/**
 * Reads delimited text row by row as it arrives. A row that is badly written carries its problem, and reading goes on
 * after it where that is possible. Empty lines are left out.
 *
 * @param chunks Pieces of the text, cut anywhere.
 * @source RFC 4180 section 2; line ends may be CRLF or LF, and a byte order mark is skipped.
 */
export function* readRows(chunks: Iterable<string>, options: RowOptions = {}): Generator<TableRow> {
  const { delimiter = ',', firstLine = 1, trim = false, takes } = options
  let number = 0
  let open: OpenRow | undefined
  for (const { text, isCut } of linesOf(chunks)) {
    number += 1
    if (number < firstLine) continue
    if (open === undefined && !isCut && (text === '' || text === '\r')) continue
    if (open === undefined && !isCut && !text.includes('"')) {
      if (takes?.(text, number) === true) continue
      const row = plainRow(number, text, { delimiter, trim })
      if (row.texts.length > 1 || row.texts[0] !== '' || row.problem !== undefined) yield row
      continue
    }
    open ??= new OpenRow(number, delimiter, trim)
    const isWhole = open.take(text, number)
    if (isCut) open.complain({ line: number, column: 1, message: LINE_TOO_LONG })
    if (isCut || open.isEndless) {
      yield open.finish()
      return
    }
    if (!isWhole) continue
    if (!open.isBlank) yield open.finish()
    open = undefined
  }
  if (open !== undefined) yield open.finish()
}

function plainRow(
  line: number,
  text: string,
  { delimiter, trim }: Required<Pick<RowOptions, 'delimiter' | 'trim'>>,
): PlainRow {
  const source = text.endsWith('\r') ? text.slice(0, -1) : text
  const texts = source.split(delimiter)
  const lone = source.indexOf('\r')
  const problem = lone < 0 ? tooManyCells(line, texts.length) : loneReturn(line, lone + 1)
  return new PlainRow(line, source, trim ? texts.map((one) => one.trim()) : texts, delimiter, problem)
}
