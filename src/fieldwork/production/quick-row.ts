import {
  dateMs,
  MS_PER_HOUR,
  MS_PER_MINUTE,
  MS_PER_SECOND,
  timeOfDayMs,
  type Milliseconds,
} from '../../values/index.js'

const [ZERO, NINE] = [48, 57]
const [DASH, DOT, COLON, BLANK, LETTER_T, RETURN] = [45, 46, 58, 32, 84, 13]
/** Whole numbers up to here, over a power of ten up to the 22nd, are the nearest number to what is written: one division rounds once. */
const MOST_DIGITS = 15
const POWERS = Array.from({ length: MOST_DIGITS + 1 }, (_, at) => 10 ** at)
/** Marks that stand in no stamp and in no number. */
const DELIMITERS = new Set([',', ';', '\t', '|'])
/** Wider tables are left to the reader of rows, which has rules of its own for them. */
const MOST_COLUMNS = 500

/** What a column holds: the time, one of the numbers, or nothing that is wanted. */
const [TIME, NOTHING] = [-1, -2]

/**
 * Reads rows of the commonest form without a text for each cell: `2026-07-31 14:05` or `2026-07-31T14:05:00` in one column, plain
 * numbers or empty cells, no quotes, no blanks round cells. Any other row is left to the reader of rows, which says what is wrong with
 * it, so that no rule of a table stands here.
 */
export class QuickRow {
  clockMs: Milliseconds = 0
  /** By number of the wanted column; NaN for an empty cell. */
  readonly numbers: Float64Array
  readonly #holds: Int32Array
  readonly #delimiter: number
  readonly #isFit: boolean
  #at = 0
  #number = 0
  /** The last date, as one number, and its midnight: rows of a day share it. */
  #date = -1
  #dayMs: Milliseconds | undefined

  /** @param columns Columns of the table. @param time Columns of the stamp. @param wanted Columns of the numbers; undefined for none. */
  constructor(delimiter: string, columns: number, time: readonly number[], wanted: readonly (number | undefined)[]) {
    this.numbers = new Float64Array(wanted.length).fill(Number.NaN)
    this.#delimiter = delimiter.charCodeAt(0)
    this.#holds = new Int32Array(columns).fill(NOTHING)
    wanted.forEach((column, number) => {
      if (column !== undefined) this.#holds[column] = number
    })
    const known = wanted.filter((column) => column !== undefined)
    this.#isFit =
      DELIMITERS.has(delimiter) &&
      columns <= MOST_COLUMNS &&
      time.length === 1 &&
      new Set([...known, ...time]).size === known.length + 1
    this.#holds[time[0] ?? 0] = TIME
  }

  /** Reads a line without quotes; false where it has another form, and nothing of it counts then. */
  read(text: string): boolean {
    if (!this.#isFit) return false
    const end = text.charCodeAt(text.length - 1) === RETURN ? text.length - 1 : text.length
    const columns = this.#holds.length
    this.#at = 0
    for (let column = 0; column < columns; column += 1) {
      const holds = this.#holds[column]!
      if (holds === NOTHING) {
        if (!this.#pass(text, end)) return false
      } else if (holds === TIME) {
        if (!this.#stamp(text, end)) return false
      } else {
        if (!this.#value(text, end)) return false
        this.numbers[holds] = this.#number
      }
      if (column + 1 === columns) return this.#at === end
      if (this.#at >= end || text.charCodeAt(this.#at) !== this.#delimiter) return false
      this.#at += 1
    }
    return false
  }

  /** Goes to the end of a cell; a carriage return in it is for the reader of rows. */
  #pass(text: string, end: number): boolean {
    for (; this.#at < end; this.#at += 1) {
      const code = text.charCodeAt(this.#at)
      if (code === this.#delimiter) return true
      if (code === RETURN) return false
    }
    return true
  }

  #stamp(text: string, end: number): boolean {
    const from = this.#at
    if (from + 16 > end) return false
    const between = text.charCodeAt(from + 10)
    if (between !== BLANK && between !== LETTER_T) return false
    if (text.charCodeAt(from + 4) !== DASH || text.charCodeAt(from + 7) !== DASH) return false
    if (text.charCodeAt(from + 13) !== COLON) return false
    const year = 100 * two(text, from) + two(text, from + 2)
    const [month, day] = [two(text, from + 5), two(text, from + 8)]
    const [hour, minute] = [two(text, from + 11), two(text, from + 14)]
    let second = 0
    this.#at = from + 16
    if (this.#at + 3 <= end && text.charCodeAt(this.#at) === COLON) {
      second = two(text, this.#at + 1)
      this.#at += 3
    }
    // Anything but digits makes one of them NaN; the first thousand years are not of the calendar that is meant.
    if (!(year >= 1000 && month + day + hour + minute + second >= 0)) return false
    const date = (year * 100 + month) * 100 + day
    if (date !== this.#date) [this.#date, this.#dayMs] = [date, dateMs(year, month, day)]
    if (this.#dayMs === undefined) return false
    if (hour > 23 || minute > 59 || second > 59) {
      const time = timeOfDayMs(hour, minute, second)
      if (time === undefined) return false
      this.clockMs = this.#dayMs + time
      return true
    }
    this.clockMs = this.#dayMs + hour * MS_PER_HOUR + minute * MS_PER_MINUTE + second * MS_PER_SECOND
    return true
  }

  #value(text: string, end: number): boolean {
    const from = this.#at
    if (from === end || text.charCodeAt(from) === this.#delimiter) {
      this.#number = Number.NaN
      return true
    }
    const isBelow = text.charCodeAt(from) === DASH
    if (isBelow) this.#at += 1
    let [whole, digits, parts, isAfterDot] = [0, 0, 0, false]
    for (; this.#at < end; this.#at += 1) {
      const code = text.charCodeAt(this.#at)
      if (code >= ZERO && code <= NINE) {
        whole = 10 * whole + code - ZERO
        digits += 1
        if (isAfterDot) parts += 1
      } else if (code === DOT && !isAfterDot && digits > 0) isAfterDot = true
      else break
    }
    if (digits === 0 || digits > MOST_DIGITS) return false
    const size = parts === 0 ? whole : whole / POWERS[parts]!
    this.#number = isBelow ? -size : size
    return true
  }
}

/** A number of two digits; NaN when one of them is none. */
function two(text: string, at: number): number {
  const [tens, ones] = [text.charCodeAt(at) - ZERO, text.charCodeAt(at + 1) - ZERO]
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? 10 * tens + ones : Number.NaN
}
