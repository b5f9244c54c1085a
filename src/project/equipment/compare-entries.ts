import type { Finding, Source } from '../../worksheet/index.js'
import { isPlainMap, ownValue, valueAt, type PlainMap } from '../plain-data.js'
import { count } from '../words.js'
import { entryPath, type EquipmentEntry } from './entry.js'
import { EQUIPMENT_GROUPS } from './groups.js'

const PRACTICE: Source = { document: '', standing: 'common practice, no source' }

/** Differences told one by one; the number of the rest is told. */
const MOST_DIFFERENCES = 8

const NOT_STATED = ', now not stated'

/** What is to be done with an entry beside those that a file has already. */
export interface ComparedEntry {
  readonly entry: EquipmentEntry
  readonly does: 'adds' | 'replaces' | 'keeps'
  readonly findings: readonly Finding[]
}

/**
 * Holds entries against those that stand already and against each other.
 *
 * @param equipment The part `equipment` of the file.
 * @param replace Whether an entry may take the place of another of its id.
 */
export function compareEntries(
  entries: readonly EquipmentEntry[],
  equipment: PlainMap,
  replace: boolean,
): ComparedEntry[] {
  return entries.map((entry, index) => {
    const earlier = entries.slice(0, index).find((one) => one.kind === entry.kind && one.id === entry.id)
    if (earlier !== undefined) return { entry, does: 'keeps', findings: [standsTwice(entry, earlier)] }
    const present = valueAt(equipment, [EQUIPMENT_GROUPS[entry.kind], entry.id])
    const others = [...otherIds(entry, equipment), ...entries.slice(0, index).filter((one) => one.kind === entry.kind)]
    const twins = sameProducts(entry, others)
    if (!isPlainMap(present)) return { entry, does: 'adds', findings: twins }
    const differences = differencesBetween(present, entry.values)
    if (differences.length === 0) return { entry, does: 'keeps', findings: [unchanged(entry)] }
    if (replace) return { entry, does: 'replaces', findings: [replaced(entry, differences), ...twins] }
    return { entry, does: 'keeps', findings: [sameId(entry, differences)] }
  })
}

/** `pmax_w 410, now 420` for each key that differs, nested keys dotted. */
export function differencesBetween(before: PlainMap, now: PlainMap, path = ''): string[] {
  return [...new Set([...Object.keys(before), ...Object.keys(now)])].flatMap((key) => {
    const [a, b] = [ownValue(before, key), ownValue(now, key)]
    const name = `${path}${key}`
    if (isPlainMap(a) && isPlainMap(b)) return differencesBetween(a, b, `${name}.`)
    if (JSON.stringify(a) === JSON.stringify(b)) return []
    if (a === undefined) return [`${name} new: ${show(b)}`]
    return [b === undefined ? `${name} ${show(a)}${NOT_STATED}` : `${name} ${show(a)}, now ${show(b)}`]
  })
}

function show(value: unknown): string {
  const text = typeof value === 'string' ? `'${value}'` : JSON.stringify(value)
  return text.length > 40 ? `${text.slice(0, 37)}...` : text
}

/** What changes before what is new, and last what is no longer stated. */
function listed(found: readonly string[]): string {
  const rank = (text: string): number => (text.endsWith(NOT_STATED) ? 2 : Number(text.includes(' new: ')))
  const differences = found.toSorted((a, b) => rank(a) - rank(b))
  const rest = differences.length - MOST_DIFFERENCES
  return [...differences.slice(0, MOST_DIFFERENCES), ...(rest > 0 ? [count(rest, 'more difference')] : [])].join('; ')
}

type Named = Pick<EquipmentEntry, 'id' | 'values'>

function otherIds({ kind, id }: EquipmentEntry, equipment: PlainMap): Named[] {
  const group = ownValue(equipment, EQUIPMENT_GROUPS[kind])
  if (!isPlainMap(group)) return []
  return Object.entries(group).flatMap(([other, values]) =>
    other !== id && isPlainMap(values) ? [{ id: other, values }] : [],
  )
}

/** Maker and model are one text, `name`; blanks and capitals do not make another product. */
function sameProducts(entry: EquipmentEntry, others: readonly Named[]): Finding[] {
  const name = plain(entry.values['name'])
  if (name === '') return []
  return others
    .filter(({ values }) => plain(values['name']) === name)
    .map(({ id, values }) => {
      const differences = differencesBetween(values, entry.values)
      const how = differences.length === 0 ? 'the same values' : `other values: ${listed(differences)}`
      return {
        severity: 'warning',
        id: 'equipment.same-product',
        message: `${entry.id} has the name of ${id}, with ${how}`,
        where: entryPath(entry, 'name'),
        source: PRACTICE,
        fix: 'keep one of them, or tell their names apart by revision of the sheet',
      }
    })
}

function plain(name: unknown): string {
  return typeof name === 'string' ? name.trim().replaceAll(/\s+/gu, ' ').toLowerCase() : ''
}

function standsTwice(entry: EquipmentEntry, earlier: EquipmentEntry): Finding {
  const differences = differencesBetween(earlier.values, entry.values)
  const how = differences.length === 0 ? 'the same values' : `other values: ${listed(differences)}`
  return {
    severity: 'error',
    id: 'equipment.same-id',
    message: `${entry.id} is stated twice, with ${how}`,
    where: entryPath(entry),
    source: PRACTICE,
    fix: 'give each its own id, or take one out',
  }
}

function sameId(entry: EquipmentEntry, differences: readonly string[]): Finding {
  return {
    severity: 'error',
    id: 'equipment.same-id',
    message: `${entry.id} stands in the file already, with other values: ${listed(differences)}`,
    where: entryPath(entry),
    source: PRACTICE,
    fix: 'give the new one another id, or add --replace to put it in the place of the old one',
  }
}

function replaced(entry: EquipmentEntry, differences: readonly string[]): Finding {
  return {
    severity: 'warning',
    id: 'equipment.replaced',
    message: `${entry.id} takes the place of what stood there: ${listed(differences)}`,
    where: entryPath(entry),
    source: PRACTICE,
    fix: 'look whether projects that use it still hold: run-fleet with a baseline shows what moves',
  }
}

function unchanged(entry: EquipmentEntry): Finding {
  return {
    severity: 'note',
    id: 'equipment.unchanged',
    message: `${entry.id} stands in the file already, with the same values`,
    where: entryPath(entry),
    source: PRACTICE,
  }
}
