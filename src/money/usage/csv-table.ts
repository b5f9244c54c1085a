/** A row of a table and its line in the file, counted from 1. */
export interface CsvRow {
  readonly line: number
  readonly cells: readonly string[]
}

/** Splits delimited text: quotes, doubled quotes, line ends of every kind, a leading byte-order mark. Empty lines are left out. */
export function parseCsv(text: string, delimiter: string): CsvRow[] {
  const source = text.startsWith('\ufeff') ? text.slice(1) : text
  const rows: CsvRow[] = []
  let cells: string[] = []
  let cell = ''
  let quoted = false
  let line = 1
  let rowLine = 1
  const endRow = (): void => {
    cells.push(cell.trim())
    if (cells.some((one) => one !== '')) rows.push({ line: rowLine, cells })
    cells = []
    cell = ''
  }
  for (let i = 0; i < source.length; i++) {
    const c = source.charAt(i)
    if (c === '\n') line += 1
    if (quoted) {
      if (c !== '"') cell += c
      else if (source.charAt(i + 1) === '"') cell += source.charAt(i++)
      else quoted = false
    } else if (c === '"' && cell.trim() === '') {
      quoted = true
      cell = ''
    } else if (c === delimiter) {
      cells.push(cell.trim())
      cell = ''
    } else if (c === '\n' || c === '\r') {
      if (c === '\r' && source.charAt(i + 1) === '\n') continue
      endRow()
      rowLine = line
    } else cell += c
  }
  endRow()
  return rows
}
