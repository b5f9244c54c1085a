import { RECORD_FORMATS } from './packet-record.js'

/** More than sheets have; a count stands for as many things that are looked for. */
const MOST_OF_ONE = 100_000

/** Whether data that were read have the form of a record: a seal shows damage alone, and anybody can put a new one on. */
export function isPacketRecord(data: Readonly<Record<string, unknown>>): boolean {
  const { format, project, revision, sheets } = data
  return (
    RECORD_FORMATS.some((one) => one === format) &&
    typeof project === 'string' &&
    typeof revision === 'string' &&
    Array.isArray(sheets) &&
    sheets.every(isSheet)
  )
}

function isSheet(sheet: unknown): boolean {
  if (!isMap(sheet)) return false
  const { id, title, paper, texts, figures, lines } = sheet
  return (
    typeof id === 'string' &&
    typeof title === 'string' &&
    (paper === undefined || typeof paper === 'string') &&
    [texts, figures, lines ?? {}].every((stood) => isMap(stood) && Object.values(stood).every(isStood))
  )
}

function isStood(stood: unknown): boolean {
  if (Array.isArray(stood)) return stood.length <= MOST_OF_ONE && stood.every(isPlace)
  return typeof stood === 'number' && Number.isInteger(stood) && stood >= 0 && stood <= MOST_OF_ONE
}

function isPlace(place: unknown): boolean {
  return Array.isArray(place) && place.length === 5 && place.every((one) => Number.isFinite(one))
}

function isMap(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
