import type { TableProblem } from './table-row.js'

/** Old programs end lines with a carriage return; taken for a blank it would join rows. */
export function loneReturn(line: number, column: number): TableProblem {
  return {
    line,
    column,
    message: 'a carriage return stands alone; put the cell in quotes, or end lines with a line feed',
  }
}

/** More columns than any table has. */
const MOST_CELLS = 2000

export function tooManyCells(line: number, count: number): TableProblem | undefined {
  return count <= MOST_CELLS
    ? undefined
    : { line, column: 1, message: `the row has ${count} cells; at most ${MOST_CELLS} are read` }
}
