/** A field with the place where it begins, counted from 1. */
export interface CsvField {
  readonly text: string
  readonly line: number
  readonly column: number
}

/** A record, or what is wrong with it; reading goes on after it where that is possible. */
export interface CsvRecord {
  readonly line: number
  readonly fields: readonly CsvField[]
  readonly problem?: { readonly line: number; readonly column: number; readonly message: string }
}

/** More than any cell of a table needs; an unclosed quote must not swallow a whole file. */
const LONGEST_FIELD = 100_000
const MOST_FIELDS = 2000

/**
 * Reads comma-separated values as they arrive, with the place of every field.
 *
 * @param chunks Pieces of the text, cut anywhere.
 * @source RFC 4180 section 2; line ends may be CRLF or LF, and a byte order mark is skipped. Empty lines are skipped.
 */
export function* readCsv(chunks: Iterable<string>): Generator<CsvRecord> {
  const reader = new CsvReader()
  for (const chunk of chunks) {
    for (const character of chunk) {
      const record = reader.take(character)
      if (record !== undefined) yield record
      if (reader.stopped) return
    }
  }
  const last = reader.finish()
  if (last !== undefined) yield last
}

type State = 'start' | 'plain' | 'quoted' | 'quote-in-quoted'

class CsvReader {
  stopped = false
  #state: State = 'start'
  #fields: CsvField[] = []
  #text: string[] = []
  #problem: CsvRecord['problem']
  #line = 1
  #column = 1
  #startLine = 1
  #startColumn = 1
  #recordLine = 1
  #afterReturn = false
  #first = true

  take(character: string): CsvRecord | undefined {
    const isMark = this.#first && character === '\uFEFF'
    this.#first = false
    if (isMark) return undefined
    const record = this.#step(character)
    if (character === '\n') {
      this.#line += 1
      this.#column = 1
    } else this.#column += 1
    if (record !== undefined || (this.#state === 'start' && this.#fields.length === 0)) this.#recordLine = this.#line
    if (this.#state === 'start') [this.#startLine, this.#startColumn] = [this.#line, this.#column]
    return record
  }

  finish(): CsvRecord | undefined {
    if (this.#state === 'quoted') {
      this.#complain('the quote that opens here is never closed', this.#startLine, this.#startColumn)
    }
    if (this.#state === 'start' && this.#fields.length === 0 && this.#problem === undefined) return undefined
    return this.#endRecord()
  }

  #step(character: string): CsvRecord | undefined {
    if (this.#afterReturn && character !== '\n') {
      this.#complain('a carriage return stands alone; put the cell in quotes', this.#line, this.#column - 1)
    }
    this.#afterReturn = false
    switch (this.#state) {
      case 'start':
        if (character === '"') {
          this.#state = 'quoted'
          return undefined
        }
        return this.#plain(character)
      case 'plain':
        return this.#plain(character)
      case 'quoted':
        if (character === '"') this.#state = 'quote-in-quoted'
        else this.#add(character)
        return undefined
      case 'quote-in-quoted':
        if (character === '"') {
          this.#add(character)
          this.#state = 'quoted'
          return undefined
        }
        if (character !== ',' && character !== '\n' && character !== '\r') {
          this.#complain(
            'text follows a closing quote; inside quotes a quote is written twice',
            this.#line,
            this.#column,
          )
        }
        return this.#plain(character)
    }
  }

  #plain(character: string): CsvRecord | undefined {
    if (character === ',') {
      this.#endField()
      return undefined
    }
    if (character === '\n') return this.#endRecord()
    if (character === '\r') {
      this.#afterReturn = true
      if (this.#state === 'start') this.#state = 'plain'
      return undefined
    }
    if (character === '"') {
      this.#complain(
        'a quote in a cell that does not begin with one; put the whole cell in quotes',
        this.#line,
        this.#column,
      )
    }
    this.#state = 'plain'
    this.#add(character)
    return undefined
  }

  #add(character: string): void {
    this.#text.push(character)
    if (this.#text.length <= LONGEST_FIELD) return
    this.#complain(
      `a cell of more than ${LONGEST_FIELD} characters; is its quote closed?`,
      this.#startLine,
      this.#startColumn,
    )
    this.stopped = true
  }

  #endField(): void {
    this.#fields.push({ text: this.#text.join(''), line: this.#startLine, column: this.#startColumn })
    this.#text = []
    this.#state = 'start'
    if (this.#fields.length > MOST_FIELDS) this.#fields.length = MOST_FIELDS
  }

  #endRecord(): CsvRecord | undefined {
    this.#endField()
    const [only] = this.#fields
    const isEmptyLine = this.#fields.length === 1 && only?.text === '' && this.#problem === undefined
    const record = {
      line: this.#recordLine,
      fields: this.#fields,
      ...(this.#problem === undefined ? {} : { problem: this.#problem }),
    }
    this.#fields = []
    this.#problem = undefined
    return isEmptyLine ? undefined : record
  }

  /** The first problem of a record counts. */
  #complain(message: string, line: number, column: number): void {
    this.#problem ??= { line, column, message }
  }
}
