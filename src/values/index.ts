export { at } from './at.js'
export { editDistance } from './edit-distance.js'
export { Kept } from './kept.js'
export { own } from './own.js'
export { parseJson, TooMuchJson } from './parse-json.js'
export * from './polygon/index.js'
export * from './statistics/index.js'
export * from './time/index.js'
export {
  delimitersIn,
  headerOf,
  openTable,
  readRows,
  readTable,
  type OpenTable,
  type RowOptions,
  type Table,
  type TableCell,
  type TableProblem,
  type TableRow,
  type TakesLine,
} from './table/index.js'
export * from './units/index.js'
