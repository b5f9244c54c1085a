import { unitOfPath } from '../key-unit.js'
import { applyOverride, nameOfOverride, readOverride } from '../override.js'
import { splitPath } from '../path.js'
import { setOwn, valueAt, type PlainMap } from '../plain-data.js'
import type { Problem } from '../problem.js'
import { projectSchema } from '../schema.js'
import { entryPath, type EquipmentEntry } from './entry.js'
import { schemaOfKind, type EquipmentKind } from './groups.js'
import { fromSheetUnit, sheetUnitsOf, splitQuantity } from './sheet-units.js'

type Place = Omit<Problem, 'path' | 'message'>

/** One value as it was typed, or as it stands in a cell, with its place. */
export interface StatedValue {
  /** `pmax_w`, or dotted below a part: `lag.size`. */
  readonly key: string
  /** A number may have a unit of the data sheet after it: `1722 mm`. */
  readonly text: string
  readonly place: Place
}

/** Reads `--set key=value` texts; those that have no key are problems. */
export function readSettings(texts: readonly string[]): {
  readonly stated: readonly StatedValue[]
  readonly problems: readonly Problem[]
} {
  const stated: StatedValue[] = []
  const problems: Problem[] = []
  for (const text of texts) {
    const place = { file: nameOfOverride(text) }
    const equals = text.indexOf('=')
    if (equals < 1)
      problems.push({ ...place, path: '', message: 'not of the form key=value, for example --set pmax_w=410' })
    else stated.push({ key: text.slice(0, equals).trim(), text: text.slice(equals + 1), place })
  }
  return { stated, problems }
}

/**
 * One piece of equipment from what is stated of it.
 *
 * @param whole The place of the piece as such.
 * @returns The entry and what cannot be read of it.
 */
export function entryOfSettings(
  { kind, id }: Pick<EquipmentEntry, 'kind' | 'id'>,
  stated: readonly StatedValue[],
  whole: Place,
): { readonly entry: EquipmentEntry; readonly problems: readonly Problem[] } {
  const problems: Problem[] = []
  const data: PlainMap = {}
  const sheetWords = new Map<string, string>()
  const places = new Map<string, Place>()
  const path = entryPath({ kind, id })
  for (const { key, text, place } of stated) {
    const inner = splitPath(key).join('.')
    const read = inUnitOfKey(inner, text)
    const message = 'message' in read ? read.message : put(data, `${path}.${inner}`, read.text)
    if (message !== undefined) problems.push({ ...place, path: `${path}.${inner}`, message })
    if ('words' in read) sheetWords.set(inner, read.words)
    places.set(inner, place)
  }
  const values = inOrder((valueAt(data, path.split('.')) ?? {}) as PlainMap, kind)
  const placeOf = (key: string): Place => places.get(key) ?? places.get(key.split('.')[0] ?? '') ?? whole
  return { entry: { kind, id, values, sheetWords, placeOf }, problems }
}

/** Keys as the schema lists them, so that files of many hands look alike. */
function inOrder(values: PlainMap, kind: EquipmentKind): PlainMap {
  const known = Object.keys(schemaOfKind(kind).properties ?? {})
  const keys = [...known.filter((key) => Object.hasOwn(values, key)), ...Object.keys(values)]
  const ordered: PlainMap = {}
  for (const key of keys) setOwn(ordered, key, values[key])
  return ordered
}

function put(data: PlainMap, path: string, text: string): string | undefined {
  const override = readOverride(`${path}=${text}`, projectSchema())
  return 'message' in override ? override.message : applyOverride(data, override)
}

type InUnit = { readonly text: string } | { readonly text: string; readonly words: string }

/** A value that has a unit of the sheet, in the unit of its key. What has no unit, or no number, is left to the schema. */
function inUnitOfKey(key: string, text: string): InUnit | { readonly message: string } {
  const unit = unitOfPath(splitPath(key).filter((segment) => !/^\d+$/u.test(segment)))
  const quantity = splitQuantity(text)
  if (quantity === undefined || unit === '') return { text }
  const value = fromSheetUnit(quantity.value, quantity.unit, unit)
  if (value === undefined) {
    const allowed = sheetUnitsOf(unit).join(', ')
    return { message: `'${quantity.unit}' is no unit of a value in ${unit}; units: ${allowed}, or the number alone` }
  }
  return value === quantity.value ? { text: String(value) } : { text: String(value), words: text.trim() }
}
