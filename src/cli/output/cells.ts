import { cellValue, cleanLine, formatNumber, type Cell, type Column } from '../../report/index.js'

/** A cell as people read it. */
export function cellText(cell: Cell, decimals: number | undefined): string {
  const value = cellValue(cell)
  if (value === null) return ''
  return typeof value === 'number' ? formatNumber(value, decimals) : cleanLine(value)
}

function isNumeric(rows: readonly (readonly Cell[])[], index: number): boolean {
  const values = rows.map((row) => cellValue(row[index] ?? null)).filter((value) => value !== null && value !== '')
  return values.length > 0 && values.every((value) => typeof value === 'number')
}

export function alignment(column: Column, rows: readonly (readonly Cell[])[], index: number): 'left' | 'right' {
  return column.align ?? (isNumeric(rows, index) ? 'right' : 'left')
}
