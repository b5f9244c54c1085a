import type { Box, Sheet } from '../model/index.js'
import { boxNow, kept, type Kept, type PacketRecord } from './packet-record.js'
import { itemsOf, union, type Item } from './sheet-items.js'

/** What changed on a sheet since an earlier issue. */
export interface SheetChange {
  readonly id: string
  readonly kind: 'new' | 'changed'
  /** Where it says something else, or where something is gone, on paper, joined where near. */
  readonly places: readonly Box[]
  /** How many texts, figures and lines of the earlier issue are gone from it and from continuations that are no more. */
  readonly gone: number
}

/** Changes that lie nearer are in one cloud, points. */
const NEAR_PT = 14
/**
 * Compares sheets with those of an earlier issue. Texts, figures and lines of diagrams are compared by what they are, not by
 * where they stand: what only moves down a table or to the continuation of a sheet is no change.
 *
 * @param ownTexts Texts that tell of the issues themselves and are new with each.
 */
export function changesSince(
  record: PacketRecord,
  sheets: readonly Sheet[],
  ownTexts: ReadonlySet<string> = new Set(),
): SheetChange[] {
  const known = new Set(record.sheets.map(({ id }) => familyOf(id)))
  const families = new Set(sheets.map(({ id }) => familyOf(id)))
  return [...families].flatMap((family): SheetChange[] => {
    const own = sheets.filter(({ id }) => familyOf(id) === family)
    if (!known.has(family)) return own.map(({ id }) => ({ id, kind: 'new', places: [], gone: 0 }))
    const before = record.sheets.filter(({ id }) => familyOf(id) === family)
    // A record of the first format tells no lines, so that there is nothing to compare them with.
    const hasLines = before.every(({ lines }) => lines !== undefined)
    const { added, gone } = compared(before.flatMap(kept), own, hasLines)
    return own.flatMap((sheet, index): SheetChange[] => {
      const news = added.filter(
        ({ sheet: of, item }) => of === sheet && !(item.kind === 'text' && ownTexts.has(item.key)),
      )
      // What stood on a sheet that is no more is told of the first.
      const lost = gone.filter(({ id }) => id === sheet.id || (index === 0 && own.every((each) => each.id !== id)))
      if (news.length + lost.length === 0) return []
      const boxes = [...news.map(({ item }) => item.box), ...lost.flatMap((each) => boxNow(each, sheet) ?? [])]
      return [{ id: sheet.id, kind: 'changed', places: joined(boxes), gone: lost.length }]
    })
  })
}

/** Sheets of the earlier issue that there are no more. */
export function sheetsGone(record: PacketRecord, sheets: readonly Sheet[]): string[] {
  const ids = new Set(sheets.map(({ id }) => familyOf(id)))
  return [...new Set(record.sheets.map(({ id }) => familyOf(id)))].filter((id) => !ids.has(id))
}

interface Found {
  readonly sheet: Sheet
  readonly item: Item
}

/** What stands on the sheets and did not before, and what did and does not: of several alike the ones that lie nearest stay. */
function compared(
  before: readonly Kept[],
  sheets: readonly Sheet[],
  hasLines: boolean,
): { readonly added: readonly Found[]; readonly gone: readonly Kept[] } {
  const left = new Map<string, Kept[]>()
  for (const each of before) left.set(keyOf(each), [...(left.get(keyOf(each)) ?? []), each])
  const found = sheets.flatMap((sheet) =>
    itemsOf(sheet)
      .filter(({ kind }) => hasLines || kind !== 'line')
      .map((item): Found => ({ sheet, item })),
  )
  const take = ({ sheet, item }: Found, withinPt: number): boolean => {
    const alike = left.get(keyOf(item)) ?? []
    const ranked = alike
      .map((each, index) => ({ index, apart: each.id === sheet.id ? apartPt(boxNow(each, sheet), item.box) : FAR_PT }))
      .toSorted((a, b) => a.apart - b.apart)
    const [nearest] = ranked
    if (nearest === undefined || nearest.apart > withinPt) return false
    alike.splice(nearest.index, 1)
    return true
  }
  const moved = found.filter((each) => !take(each, SAME_PT))
  const added = moved.filter((each) => !take(each, Infinity))
  return { added, gone: [...left.values()].flat() }
}

/** What lies no farther from where it was stands where it stood, points. */
const SAME_PT = 1
/** Farther than any place of a sheet, points. */
const FAR_PT = 1e6

function apartPt(was: Box | undefined, is: Box): number {
  return was === undefined ? FAR_PT : Math.hypot(was.x - is.x, was.y - is.y)
}

/** `E-603` of its continuation `E-603-2`. */
const familyOf = (id: string): string => id.replace(/^([A-Z]-\d+)-\d+$/u, '$1')
const keyOf = ({ kind, key }: Pick<Item, 'kind' | 'key'>): string => `${kind} ${key}`

/** Boxes that lie near each other become one. */
function joined(boxes: readonly Box[]): Box[] {
  const groups: Box[] = []
  for (const box of boxes) {
    let grown = box
    for (let index = groups.length - 1; index >= 0;) {
      const other = groups[index]
      if (other !== undefined && near(grown, other)) {
        grown = union(grown, other)
        groups.splice(index, 1)
        index = groups.length - 1
      } else index--
    }
    groups.push(grown)
  }
  return groups
}

const near = (a: Box, b: Box): boolean =>
  a.x - NEAR_PT <= b.x + b.width &&
  b.x - NEAR_PT <= a.x + a.width &&
  a.y - NEAR_PT <= b.y + b.height &&
  b.y - NEAR_PT <= a.y + a.height
