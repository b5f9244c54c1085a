export { at } from './at.js'
export { beyondXml, LONGEST_TAG, LONGEST_TEXT, type XmlBounds } from './beyond-xml.js'
export { editDistance } from './edit-distance.js'
export { Kept } from './kept.js'
export { lineAt, linesFrom } from './line-at.js'
export { own } from './own.js'
export { checkJson, DoubtfulJson, parseJson, TooMuchJson } from './parse-json.js'
export * from './polygon/index.js'
export * from './statistics/index.js'
export * from './time/index.js'
export {
  MOST_BAD_ROWS,
  MOST_HEAD_LINES,
  MOST_WEATHER_ROWS,
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
