export { cautionTexts, STAGE_CAUTIONS, type CautionSubject } from './cautions.js'
export { columnKey, renderCsv } from './csv.js'
export { markdownLine } from './escape-markdown.js'
export { escapeMarkup } from './escape-markup.js'
export { errnoWords } from './errno.js'
export { defectText, stageErrorText } from './failure-text.js'
export { inCurrency, reportInCurrency, tableInCurrency, textInCurrency, valuesInCurrency } from './in-currency.js'
export { plainValues, RESULT_FORMAT, renderJson } from './json.js'
export { formatNumber, formatSignificant, roundForMachines } from './numbers.js'
export {
  cellTone,
  cellValue,
  columnTitle,
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
  type ToneCell,
} from './report.js'
export { cleanJson, cleanLine, cleanText, markedLine } from './sanitise.js'
