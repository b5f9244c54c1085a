export { delimitersIn, headerOf } from './delimiter.js'
export { readRows, type RowOptions } from './read-rows.js'
export { readTable, type Table } from './read-table.js'
export type { TableCell, TableProblem, TableRow } from './table-row.js'
