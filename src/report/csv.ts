import { roundForMachines } from './numbers.js'
import { cellValue, type Cell, type Column, type TableData } from './report.js'
import { cleanLine, cleanText } from './sanitise.js'

/** A table as CSV (RFC 4180: CRLF, quotes doubled); numbers unformatted, headings in snake_case with the unit. */
export function renderCsv(table: TableData): string {
  const lines = [table.columns.map((column) => defuse(columnKey(column))), ...table.rows.map((row) => row.map(field))]
  return lines.map((line) => `${line.map(quote).join(',')}\r\n`).join('')
}

/** `energy_kwh` for `Energy (kWh)`. */
export function columnKey(column: Column): string {
  if (column.key !== undefined) return cleanLine(column.key)
  return `${column.heading} ${column.unit ?? ''}`
    .toLowerCase()
    .replaceAll('%', 'pct')
    .replaceAll('/', ' per ')
    .replace(/[^\p{L}\p{N}]+/gu, '_')
    .replace(/^_|_$/gu, '')
}

function field(cell: Cell): string {
  const value = cellValue(cell)
  if (value === null) return ''
  if (typeof value === 'number') return String(roundForMachines(value))
  return defuse(value)
}

/**
 * A spreadsheet would run a text that begins like a formula, in some countries in wide letters too, so it gets an apostrophe; a number
 * stays a number.
 */
function defuse(value: string): string {
  const text = cleanText(value)
  const isNumber = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/u.test(text)
  // The tab and return that also start a formula are looked for before they are cleaned away.
  return !isNumber && (/^[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]/u.test(text.trimStart()) || /^[\t\r]/u.test(value))
    ? `'${text}`
    : text
}

function quote(text: string): string {
  return /[",\r\n]|^\s|\s$/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
