export { own } from './own.js'
export {
  readRows,
  readTable,
  type RowOptions,
  type Table,
  type TableCell,
  type TableProblem,
  type TableRow,
} from './table/index.js'
export * from './units/index.js'
