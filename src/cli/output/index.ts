export { countFindings, placeOf } from './findings.js'
export { columnKey, renderCsv } from './csv.js'
export { errnoWords } from './errno.js'
export { RESULT_FORMAT, renderJson } from './json.js'
export { renderMarkdown } from './markdown.js'
export { formatNumber, formatSignificant, roundForMachines } from './numbers.js'
export { plotXY } from './plot.js'
export {
  csvTable,
  type Axis,
  type Bar,
  type Cell,
  type Column,
  type Fact,
  type Report,
  type ReportContext,
  type Section,
  type Series,
  type TableData,
  type Tone,
} from './report.js'
export { cleanJson, cleanLine, cleanText } from './sanitise.js'
export { FILE_STYLE, streamStyle, type Style } from './style.js'
export { renderFindings, renderText } from './text.js'
export { workLines, type WorkLines } from './work.js'
export { checkTarget, writeWhole } from './write-file.js'
export { displayWidth, hang, wrapText } from './wrap.js'
