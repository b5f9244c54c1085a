import { MOST_BAD_ROWS, MOST_CELLS } from './table-bounds.js'
import type { TableProblem } from './table-row.js'

/** Old programs end lines with a carriage return; taken for a blank it would join rows. */
export function loneReturn(line: number, column: number): TableProblem {
  return {
    line,
    column,
    message: 'a carriage return stands alone; put the cell in quotes, or end lines with a line feed',
  }
}

export function tooManyCells(line: number, count: number): TableProblem | undefined {
  return count <= MOST_CELLS
    ? undefined
    : { line, column: 1, message: `the row has ${count} cells; at most ${MOST_CELLS} are read` }
}

export function tooManyRows(line: number, most: number): TableProblem {
  return {
    line,
    column: 1,
    message: `more than ${most} rows; at most ${most} are read: split the table, or take out what is not wanted`,
  }
}

export function tooManyBadRows(line: number): TableProblem {
  return {
    line,
    column: 1,
    message: `more than ${MOST_BAD_ROWS} rows are badly written, and nothing below is read; is it this table, and its delimiter?`,
  }
}
