import { ProjectError, type Problem } from '../../project/index.js'
import { DoubtfulJson, parseJson, TooMuchJson } from '../../values/index.js'
import { badJson, findJson, type JsonPath } from './json-place.js'
import { FIELDS, type FieldKind, type RateRecord } from './rate-record.js'

/** A record with the way to it in its file. */
export interface PlacedRecord {
  readonly record: Readonly<Record<string, unknown>>
  readonly path: JsonPath
}

/** A record has about a thousand; the largest utility has some hundreds of records. */
const MOST_MARKS = 2_000_000
const FORMS = 'a record, a list of records, or {"items": [record, ...]} as the service sends it'

/**
 * The records of a saved file, unchecked.
 *
 * @throws ProjectError with line and column when it is no JSON or holds no records.
 */
export function readRecords(file: string, text: string): PlacedRecord[] {
  let data: unknown
  try {
    data = parseJson(text.replace(/^\uFEFF/u, ' '), MOST_MARKS)
  } catch (error) {
    if (error instanceof TooMuchJson) {
      const message = `${error.message}; save the answer of the service for one utility, ${FORMS}`
      throw new ProjectError([{ file, path: '', message }], 2)
    }
    if (error instanceof DoubtfulJson) {
      const message = `this is JSON ${error.message}, so that nobody can tell which value is meant; save the answer of the service anew`
      throw new ProjectError([{ file, path: '', message }], 2)
    }
    const message = `this is no JSON; the file is ${FORMS}`
    throw new ProjectError([{ file, ...badJson(text), path: '', message }], 2, new Map([[file, text]]))
  }
  const refuse = (path: JsonPath, message: string): ProjectError => refused(file, text, [[path, message]])
  const items = isMap(data) && 'items' in data ? data['items'] : data
  const base: JsonPath = isMap(data) && 'items' in data ? ['items'] : []
  if (isMap(items)) return [{ record: items, path: base }]
  if (!Array.isArray(items)) throw refuse(base, `found ${sayKind(items)}; the file is ${FORMS}`)
  if (items.length === 0)
    throw refuse(base, 'the list of records is empty; save the answer for another utility or rate')
  return items.map((record: unknown, i) => {
    if (isMap(record)) return { record, path: [...base, i] }
    throw refuse([...base, i], `found ${sayKind(record)}; each item is one record, a map of its fields`)
  })
}

/**
 * Checks the fields of one record.
 *
 * @throws ProjectError with every field that is not what it has to be, each at its line and column.
 */
export function checkRecord(file: string, text: string, { record, path }: PlacedRecord): RateRecord {
  const wrong: [JsonPath, string][] = []
  for (const [field, kind] of Object.entries(FIELDS)) {
    const value = record[field]
    if (value === undefined || value === null) continue
    for (const [inner, message] of troubles(kind, value)) wrong.push([[...path, field, ...inner], message])
  }
  for (const kind of ['energy', 'demand']) {
    const structure = record[`${kind}ratestructure`]
    if (!Array.isArray(structure) || wrong.length > 0) continue
    for (const days of ['weekday', 'weekend']) {
      const field = `${kind}${days}schedule`
      for (const [m, row] of ((record[field] ?? []) as readonly number[][]).entries()) {
        const h = row.findIndex((period) => period >= structure.length)
        if (h < 0) continue
        const message = `month ${m + 1}, hour ${h} names period ${String(row[h])}, and ${kind}ratestructure has ${structure.length}, counted from 0`
        wrong.push([[...path, field, m, h], message])
      }
    }
  }
  if (wrong.length > 0) throw refused(file, text, wrong)
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== null))
}

function refused(file: string, text: string, wrong: readonly (readonly [JsonPath, string])[]): ProjectError {
  const problems: Problem[] = wrong.map(([path, message]) => ({
    file,
    ...findJson(text, path),
    path: path.join('.'),
    message,
  }))
  return new ProjectError(problems, 2, new Map([[file, text]]))
}

type Trouble = readonly [path: JsonPath, message: string]

function troubles(kind: FieldKind, value: unknown): Trouble[] {
  switch (kind) {
    case 'any':
      return []
    case 'text':
      return typeof value === 'string' ? [] : [[[], `found ${sayKind(value)}; this is text`]]
    case 'number':
      return isNumber(value) ? [] : [[[], `found ${sayKind(value)}; this is a number`]]
    case 'yes or no':
      return typeof value === 'boolean' ? [] : [[[], `found ${sayKind(value)}; this is true or false`]]
    case 'twelve':
      return list(value, 12, 'twelve numbers, January first', (one) =>
        isNumber(one) ? [] : [[[], `found ${sayKind(one)}; this is a number`]],
      )
    case 'schedule':
      return list(value, 12, '12 rows of 24 periods, January first', (row) =>
        list(row, 24, '24 periods, the hour from midnight first', (one) =>
          isNumber(one) && Number.isInteger(one) && one >= 0
            ? []
            : [[[], `found ${sayKind(one)}; a period is a whole number from 0`]],
        ),
      )
    case 'tiers':
      return list(value, undefined, 'periods, each a list of tiers', (tiers) =>
        list(tiers, undefined, 'a list of tiers', (tier) => {
          if (!isMap(tier)) return [[[], `found ${sayKind(tier)}; a tier is a map of max, unit, rate, adj and sell`]]
          return Object.entries(tier).flatMap(([key, one]): Trouble[] => {
            if (one === null || key === 'unit')
              return one === null || typeof one === 'string' ? [] : [[[key], 'this is text']]
            return isNumber(one) ? [] : [[[key], `found ${sayKind(one)}; this is a number`]]
          })
        }),
      )
  }
}

function list(value: unknown, count: number | undefined, what: string, each: (one: unknown) => Trouble[]): Trouble[] {
  if (!Array.isArray(value)) return [[[], `found ${sayKind(value)}; this is ${what}`]]
  if (count !== undefined && value.length !== count) return [[[], `found ${value.length} entries; this is ${what}`]]
  return value.flatMap((one: unknown, i) => each(one).map(([path, message]): Trouble => [[i, ...path], message]))
}

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value)

export function isMap(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function sayKind(value: unknown): string {
  if (Array.isArray(value)) return 'a list'
  if (isMap(value)) return 'a map'
  const text = JSON.stringify(value) ?? 'nothing'
  return text.length > 40 ? `${text.slice(0, 37)}...` : text
}
