import { cellValue, type Cell, type TableData } from '../../report/index.js'

/** Part of the last printed digit by which a sum and its parts may differ before they are rounded. */
const SAME = 0.05

/**
 * A table whose printed rows add up to its printed last row: where a column of numbers is the sum that stands below it, its
 * numbers are rounded down, and those with the largest rests up, until the sum is met. Each stays within one unit of
 * the last digit; JSON and CSV keep the figures themselves.
 *
 * @source The method of the largest remainder (Hamilton), as in apportioning seats; from memory.
 */
export function withRoundedSums<Table extends TableData>(table: Table): Table {
  const { total, rows, columns } = table
  if (total === undefined) return table
  const shown = rows.map((row) => [...row])
  columns.forEach(({ decimals = 0 }, index) => {
    const sum = numberOf(total[index])
    const numbers = rows.map((row) => numberOf(row[index]))
    if (sum === undefined || numbers.some((number) => number === undefined)) return
    const rounded = addingUp(numbers as number[], sum, 10 ** -decimals)
    rounded?.forEach((value, row) => {
      const cell = rows[row]?.[index]
      if (shown[row] !== undefined) shown[row][index] = withValue(cell, value)
    })
  })
  return { ...table, rows: shown }
}

/** Multiples of the unit near the numbers that make the rounded sum; undefined when the sum is another one. */
function addingUp(numbers: readonly number[], sum: number, unit: number): number[] | undefined {
  const parts = numbers.map((number) => number / unit)
  const whole = parts.reduce((before, part) => before + part, 0)
  if (Math.abs(whole - sum / unit) > SAME) return undefined
  const floors = parts.map((part) => Math.floor(part + 1e-9))
  const missing = Math.round(sum / unit) - floors.reduce((before, part) => before + part, 0)
  const byRest = parts
    .map((part, row) => ({ row, rest: part - (floors[row] ?? 0) }))
    .toSorted((a, b) => b.rest - a.rest)
  const raised = new Set(byRest.slice(0, Math.max(0, missing)).map(({ row }) => row))
  return floors.map((floor, row) => (floor + (raised.has(row) ? 1 : 0)) * unit)
}

function numberOf(cell: Cell | undefined): number | undefined {
  const value = cell === undefined ? null : cellValue(cell)
  return typeof value === 'number' ? value : undefined
}

function withValue(cell: Cell | undefined, value: number): Cell {
  return typeof cell === 'object' && cell !== null ? { ...cell, value } : value
}
