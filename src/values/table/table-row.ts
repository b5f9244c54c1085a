/** A cell with the place where it begins, line and column counted from 1. */
export interface TableCell {
  readonly text: string
  readonly line: number
  readonly column: number
}

/** What is wrong with a table, and where. */
export interface TableProblem {
  readonly line: number
  readonly column: number
  readonly message: string
}

/** One row: the texts of its cells; where they stand is worked out when somebody asks, as a long table has millions. */
export interface TableRow {
  readonly line: number
  readonly texts: readonly string[]
  /** The first thing that is wrong with it; its texts are then what could be read. */
  readonly problem?: TableProblem
  /** The cell of a column counted from 0; undefined beyond the last. */
  readonly cell: (column: number) => TableCell | undefined
  readonly cells: () => readonly TableCell[]
}

/** A row of which no cell is in quotes: columns follow from the lengths. */
export class PlainRow implements TableRow {
  readonly line: number
  readonly texts: readonly string[]
  readonly problem?: TableProblem
  readonly #source: string
  readonly #delimiter: string

  constructor(line: number, source: string, texts: readonly string[], delimiter: string, problem?: TableProblem) {
    this.line = line
    this.texts = texts
    this.#source = source
    this.#delimiter = delimiter
    if (problem !== undefined) this.problem = problem
  }

  cell(column: number): TableCell | undefined {
    const text = this.texts[column]
    if (text === undefined) return undefined
    let at = 0
    for (let i = 0; i < column; i += 1) at = this.#source.indexOf(this.#delimiter, at) + this.#delimiter.length
    return { text, line: this.line, column: at + 1 }
  }

  cells(): TableCell[] {
    let at = 1
    return this.#source.split(this.#delimiter).map((raw, i) => {
      const cell = { text: this.texts[i] ?? '', line: this.line, column: at }
      at += raw.length + this.#delimiter.length
      return cell
    })
  }
}

/** A row with quotes, whose cells may stand on several lines. */
export class QuotedRow implements TableRow {
  readonly line: number
  readonly texts: readonly string[]
  readonly problem?: TableProblem
  readonly #cells: readonly TableCell[]

  constructor(line: number, cells: readonly TableCell[], problem?: TableProblem) {
    this.line = line
    this.texts = cells.map((cell) => cell.text)
    this.#cells = cells
    if (problem !== undefined) this.problem = problem
  }

  cell(column: number): TableCell | undefined {
    return this.#cells[column]
  }

  cells(): readonly TableCell[] {
    return this.#cells
  }
}
