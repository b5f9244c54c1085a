import type { Column, Report, TableData } from './report.js'

/** Keys of data that are names for programs and no words for people. */
const NAMES = new Set(['id', 'where', 'path', 'from', 'kind', 'stage', 'next', 'key'])

/**
 * A text with the label of another currency in the place of USD. Nothing is converted.
 *
 * @param currency Three letters; undefined leaves the text.
 */
export function textInCurrency(text: string, currency: string | undefined): string {
  if (currency === undefined || currency === 'USD') return text
  return text
    .replaceAll(/\bUSD\b/gu, currency)
    .replaceAll(/\b(?<which>constant|current|purchase-year) dollars\b/gu, '$<which> money')
    .replaceAll(/\bthe dollars of\b/gu, 'the money of')
}

/** The same data with its words in another currency; names of keys and of findings stay. */
export function inCurrency<Data>(data: Data, currency: string | undefined): Data {
  if (currency === undefined || currency === 'USD') return data
  return changed(data, currency) as Data
}

function changed(data: unknown, currency: string): unknown {
  if (typeof data === 'string') return textInCurrency(data, currency)
  if (Array.isArray(data)) return data.map((each) => changed(each, currency))
  if (typeof data !== 'object' || data === null || ArrayBuffer.isView(data)) return data
  return Object.fromEntries(
    Object.entries(data).map(([key, value]) => [key, NAMES.has(key) ? value : changed(value, currency)]),
  )
}

/**
 * A report with the label of a project's currency wherever it prints money, columns of CSV too; its values bear `currency`.
 *
 * @param currency `finance.currency` of the project; undefined when it states none.
 */
export function reportInCurrency(report: Report, currency: string | undefined): Report {
  if (currency === undefined) return report
  const { sections, csv, result } = report
  const { values, ...proof } = result
  return {
    ...report,
    sections: inCurrency(sections, currency),
    ...(csv === undefined ? {} : { csv: tableInCurrency(csv, currency) }),
    result: {
      ...inCurrency(proof, currency),
      values: valuesInCurrency(values, currency),
    },
  }
}

/** Values as a result of a project with that currency holds them: where there is money among them, they bear `currency`. */
export function valuesInCurrency(values: unknown, currency: string | undefined): unknown {
  const hasMoney =
    typeof values === 'object' && values !== null && /"[a-z0-9_]*usd[a-z0-9_]*":/u.test(JSON.stringify(values))
  return currency === undefined || !hasMoney ? values : { currency, ...inCurrency(values, currency) }
}

/** A table with the label of a currency in its headings, their names in CSV, and its texts. */
export function tableInCurrency(table: TableData, currency: string | undefined): TableData {
  if (currency === undefined) return table
  return { ...inCurrency(table, currency), columns: table.columns.map((column) => columnInCurrency(column, currency)) }
}

/** A heading, and the name that it has in CSV. */
function columnInCurrency(column: Column, currency: string): Column {
  const { key } = column
  const named = key?.replaceAll(/(?<=^|_)usd(?=_|$)/gu, currency.toLowerCase())
  return { ...inCurrency(column, currency), ...(named === undefined ? {} : { key: named }) }
}
