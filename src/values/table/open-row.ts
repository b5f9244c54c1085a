import { loneReturn, tooManyCells } from './row-problems.js'
import { LONGEST_CELL } from './table-bounds.js'
import { QuotedRow, type TableCell, type TableProblem } from './table-row.js'

interface OpenCell {
  readonly line: number
  readonly column: number
  text: string
}

/** A row with quotes while its lines arrive. */
export class OpenRow {
  /** Whether a cell has grown beyond all measure, so that reading on has no sense. */
  isEndless = false
  readonly #line: number
  readonly #delimiter: string
  readonly #trim: boolean
  readonly #cells: TableCell[] = []
  #open: OpenCell | undefined
  #problem: TableProblem | undefined

  constructor(line: number, delimiter: string, trim: boolean) {
    this.#line = line
    this.#delimiter = delimiter
    this.#trim = trim
  }

  get isBlank(): boolean {
    return this.#problem === undefined && this.#cells.length === 1 && this.#cells[0]?.text === ''
  }

  /** The first problem of a row counts. */
  complain(problem: TableProblem): void {
    this.#problem ??= problem
  }

  /**
   * Takes the next line.
   *
   * @returns Whether the row ends with it; otherwise a quote is still open.
   */
  take(text: string, line: number): boolean {
    const body = text.endsWith('\r') ? text.slice(0, -1) : text
    let at = 0
    for (;;) {
      if (this.#open === undefined) {
        const quote = this.#quoteAt(body, at)
        if (quote === undefined) {
          const end = this.#endOfCell(body, at)
          this.#plain(body.slice(at, end), line, at + 1)
          at = end
        } else {
          this.#open = { line, column: at + 1, text: '' }
          at = quote + 1
        }
      }
      if (this.#open !== undefined) {
        const after = this.#quoted(this.#open, text, at)
        if (after === undefined) return false
        at = this.#close(this.#open, body, after, line)
      }
      if (at >= body.length) return true
      at += 1
    }
  }

  finish(): QuotedRow {
    if (this.#open !== undefined) {
      const { line, column, text } = this.#open
      this.complain({ line, column, message: 'the quote that opens here is never closed' })
      this.#cells.push({ line, column, text })
    }
    return new QuotedRow(this.#line, this.#cells, this.#problem ?? tooManyCells(this.#line, this.#cells.length))
  }

  /** Where the opening quote of the cell that begins here stands, if it has one. */
  #quoteAt(body: string, at: number): number | undefined {
    let quote = at
    while (this.#trim && /\s/u.test(body[quote] ?? '') && body[quote] !== this.#delimiter) quote += 1
    return body[quote] === '"' ? quote : undefined
  }

  #endOfCell(body: string, at: number): number {
    const end = body.indexOf(this.#delimiter, at)
    return end < 0 ? body.length : end
  }

  #plain(raw: string, line: number, column: number): void {
    const quote = raw.indexOf('"')
    if (quote >= 0) {
      const message = 'a quote in a cell that does not begin with one; put the whole cell in quotes'
      this.complain({ line, column: column + quote, message })
    }
    const lone = raw.indexOf('\r')
    if (lone >= 0) this.complain(loneReturn(line, column + lone))
    this.#cells.push({ text: this.#trim ? raw.trim() : raw, line, column })
  }

  /** Adds to an open cell up to its closing quote; the place after that, or undefined when the line has none. */
  #quoted(open: OpenCell, text: string, from: number): number | undefined {
    let at = from
    for (;;) {
      const quote = text.indexOf('"', at)
      open.text += quote < 0 ? `${text.slice(at)}\n` : text.slice(at, quote)
      if (open.text.length > LONGEST_CELL) {
        this.isEndless = true
        const message = `a cell of more than ${LONGEST_CELL} characters; is its quote closed?`
        this.complain({ line: open.line, column: open.column, message })
      }
      if (quote < 0) return undefined
      if (text[quote + 1] !== '"') return quote + 1
      open.text += '"'
      at = quote + 2
    }
  }

  #close(open: OpenCell, body: string, after: number, line: number): number {
    const end = this.#endOfCell(body, after)
    const rest = body.slice(after, end)
    if (rest !== '' && !(this.#trim && rest.trim() === '')) {
      const begun = open.line === line ? '' : `; the cell begins on line ${open.line}, is its own quote closed?`
      const message = `text follows a closing quote; inside quotes a quote is written twice${begun}`
      this.complain({ line, column: after + 1, message })
    }
    this.#cells.push({ text: this.#trim ? open.text.trim() : open.text, line: open.line, column: open.column })
    this.#open = undefined
    return end
  }
}
