import { EPW_COLUMN } from './epw-columns.js'
import { readNumber } from './epw-number.js'

const [COMMA, NEWLINE, RETURN] = [44, 10, 13] as const

/** Place of each value among the nine that are read from a row. */
export const SLOT = {
  month: 0,
  day: 1,
  hour: 2,
  dryBulb: 3,
  ghi: 4,
  dni: 5,
  dhi: 6,
  wind: 7,
  snowDepth: 8,
} as const
const SLOT_OF_COLUMN = new Int8Array(64).fill(-1)
for (const [name, column] of Object.entries(EPW_COLUMN)) SLOT_OF_COLUMN[column] = SLOT[name as keyof typeof SLOT]

/** Goes through the rows of a long text and keeps the values that are used of the row it has read last. */
export class EpwRowReader {
  /** Values of the row by `SLOT`; NaN where a field is empty or no number. */
  readonly values = new Float64Array(9)
  /** Index of the first character that is not read yet. */
  at: number
  readonly #text: string

  constructor(text: string, from: number) {
    this.#text = text
    this.at = from
  }

  isAtEnd(): boolean {
    return this.at >= this.#text.length
  }

  isAtEmptyLine(): boolean {
    const first = this.#text.charCodeAt(this.at)
    return first === NEWLINE || first === RETURN
  }

  isBlankFromHere(): boolean {
    return this.#text.slice(this.at).trim() === ''
  }

  /** Reads one row. @returns How many columns it has. */
  readRow(): number {
    const text = this.#text
    const size = text.length
    let at = this.at
    let fieldAt = at
    let column = 0
    for (;;) {
      const code = at < size ? text.charCodeAt(at) : NEWLINE
      if (code === COMMA || code === NEWLINE || code === RETURN) {
        const slot = column < SLOT_OF_COLUMN.length ? SLOT_OF_COLUMN[column]! : -1
        if (slot >= 0) this.values[slot] = readNumber(text, fieldAt, at)
        column++
        at++
        if (code !== COMMA) {
          if (code === RETURN && text.charCodeAt(at) === NEWLINE) at++
          this.at = at
          return column
        }
        fieldAt = at
      } else {
        at++
      }
    }
  }
}
