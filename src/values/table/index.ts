export { delimitersIn, headerOf } from './delimiter.js'
export { readRows, type RowOptions, type TakesLine } from './read-rows.js'
export { openTable, readTable, type OpenTable, type Table } from './read-table.js'
export type { TableCell, TableProblem, TableRow } from './table-row.js'
