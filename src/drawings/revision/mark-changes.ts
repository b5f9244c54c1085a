import { counted } from '../layout/index.js'
import {
  flattenSheet,
  inPart,
  onLayer,
  type Box,
  type Primitive,
  type Sheet,
  type Tag,
  type XY,
} from '../model/index.js'
import { itemsOf, union, type Item, type PacketRecord, type SheetRecord } from './packet-record.js'

/** What changed on a sheet since an earlier issue. */
export interface SheetChange {
  readonly id: string
  readonly kind: 'new' | 'changed'
  /** Where it says something else, on paper, joined where near. */
  readonly places: readonly Box[]
  /** How many texts and figures of the earlier issue are gone from it and its continuations. */
  readonly gone: number
}

/** Changes that lie nearer are in one cloud, points. */
const NEAR_PT = 14
/** From what changed to its cloud, points. */
const AROUND_PT = 4
/** Chord of an arc of a cloud, points. */
const ARC_PT = 9

/**
 * Compares sheets with those of an earlier issue. Texts and figures are compared by what they are, not by where they stand:
 * what only moves down a table or to the continuation of a sheet is no change.
 *
 * @param ownTexts Texts that tell of the issues themselves and are new with each.
 */
export function changesSince(
  record: PacketRecord,
  sheets: readonly Sheet[],
  ownTexts: ReadonlySet<string> = new Set(),
): SheetChange[] {
  const before = new Map<string, Map<string, number>>()
  for (const sheet of record.sheets) addAll(before, sheet)
  const known = new Set(record.sheets.map(({ id }) => familyOf(id)))
  const added = sheets.map((sheet) => ({
    sheet,
    items: itemsOf(sheet).filter(
      (item) =>
        !takeOne(before.get(familyOf(sheet.id)), keyOf(item)) && !(item.kind === 'text' && ownTexts.has(item.key)),
    ),
  }))
  const told = new Set<string>()
  return added.flatMap(({ sheet, items }): SheetChange[] => {
    const family = familyOf(sheet.id)
    const first = !told.has(family)
    told.add(family)
    const gone = first ? [...(before.get(family)?.values() ?? [])].reduce((sum, count) => sum + count, 0) : 0
    if (!known.has(family)) return [{ id: sheet.id, kind: 'new', places: [], gone: 0 }]
    if (items.length === 0 && gone === 0) return []
    return [{ id: sheet.id, kind: 'changed', places: joined(items.map(({ box }) => box)), gone }]
  })
}

/** Sheets of the earlier issue that there are no more. */
export function sheetsGone(record: PacketRecord, sheets: readonly Sheet[]): string[] {
  const ids = new Set(sheets.map(({ id }) => familyOf(id)))
  return [...new Set(record.sheets.map(({ id }) => familyOf(id)))].filter((id) => !ids.has(id))
}

/** The sheets with clouds round what changed and the mark of the revision in a triangle. */
export function markChanges(sheets: readonly Sheet[], changes: readonly SheetChange[], revision: string): Sheet[] {
  return sheets.map((sheet) => {
    const change = changes.find(({ id }) => id === sheet.id)
    if (change === undefined) return sheet
    const sizePt = leastTypePt(sheet)
    const { body = sheet.frame } = sheet
    // In the upper right corner, where texts seldom reach: which sheets changed is seen while turning the pages.
    const half = halfOf(sizePt, revision)
    const corner = { x: body.x + body.width - 1.3 * half, y: sheet.frame.y + 1.5 * half + 1 }
    const overlay = [
      ...delta(corner, revision, sizePt),
      ...change.places.flatMap((place): Primitive[] => {
        const box = within(inflated(place, AROUND_PT), sheet.frame)
        return [cloud(box), ...delta(besideCloud(box, body, sizePt, revision), revision, sizePt)]
      }),
    ]
    return { ...sheet, overlay: inPart(cloudsTag(change, revision), onLayer('revision', overlay)) }
  })
}

/** The clouds of a sheet in words. */
function cloudsTag({ kind, places }: SheetChange, revision: string): Tag {
  const what = kind === 'new' ? 'the sheet is new' : `${counted(places.length, 'cloud')} round what changed`
  return { kind: 'Figure', says: `Marks of revision ${revision}: ${what}.` }
}

/** Where the triangle stands: to the right of its cloud, or to the left where the sheet ends. */
function besideCloud(box: Box, body: Box, sizePt: number, revision: string): XY {
  const half = halfOf(sizePt, revision)
  const reach = 1.3 * half + ARC_PT * 0.35
  const right = box.x + box.width + reach
  return { x: right + 1.3 * half <= body.x + body.width ? right : box.x - reach, y: box.y + half }
}

/** `E-603` of its continuation `E-603-2`. */
const familyOf = (id: string): string => id.replace(/^([A-Z]-\d+)-\d+$/u, '$1')
const keyOf = ({ kind, key }: Pick<Item, 'kind' | 'key'>): string => `${kind} ${key}`

function addAll(families: Map<string, Map<string, number>>, { id, texts, figures }: SheetRecord): void {
  const counted = families.get(familyOf(id)) ?? new Map<string, number>()
  families.set(familyOf(id), counted)
  for (const [kind, list] of [
    ['text', texts],
    ['figure', figures],
  ] as const)
    for (const [key, count] of Object.entries(list))
      counted.set(keyOf({ kind, key }), (counted.get(keyOf({ kind, key })) ?? 0) + count)
}

function takeOne(counted: Map<string, number> | undefined, key: string): boolean {
  const left = counted?.get(key) ?? 0
  if (left === 0) return false
  counted?.set(key, left - 1)
  return true
}

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

const inflated = ({ x, y, width, height }: Box, by: number): Box => ({
  x: x - by,
  y: y - by,
  width: width + 2 * by,
  height: height + 2 * by,
})

/** The part of a box within a frame, less the bulge of the arcs. */
function within(box: Box, frame: Box): Box {
  const room = inflated(frame, -ARC_PT / 2)
  const [left, top] = [Math.max(box.x, room.x), Math.max(box.y, room.y)]
  const right = Math.max(left + ARC_PT, Math.min(box.x + box.width, room.x + room.width))
  const bottom = Math.max(top + ARC_PT, Math.min(box.y + box.height, room.y + room.height))
  return { x: left, y: top, width: right - left, height: bottom - top }
}

/** A closed line of arcs that bulge outwards. */
function cloud({ x, y, width, height }: Box): Primitive {
  const corners: XY[] = [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ]
  const points = corners.flatMap((from, index): XY[] => {
    const to = corners[(index + 1) % 4] ?? from
    const [dx, dy] = [to.x - from.x, to.y - from.y]
    const arcs = Math.max(1, Math.round(Math.hypot(dx, dy) / ARC_PT))
    return Array.from({ length: arcs }, (_, arc) => arc).flatMap((arc) =>
      // A flat arc of five points; clockwise on paper, so that outwards is to the left of the way.
      [0, 0.25, 0.5, 0.75].map((part) => {
        const along = (arc + part) / arcs
        const out = (ARC_PT * 0.35 * Math.sin(Math.PI * part)) / Math.max(1e-9, Math.hypot(dx, dy))
        return { x: from.x + dx * along + dy * out, y: from.y + dy * along - dx * out }
      }),
    )
  })
  return { kind: 'path', points, closed: true, pen: 'medium' }
}

/** Half the height of the triangle that holds a mark. */
const halfOf = (sizePt: number, revision: string): number => sizePt * (0.85 + 0.3 * revision.length)

/** A triangle with the mark of the revision, about a point. */
function delta({ x, y }: XY, revision: string, sizePt: number): Primitive[] {
  const half = halfOf(sizePt, revision)
  return [
    {
      kind: 'path',
      points: [
        { x, y: y - 1.5 * half },
        { x: x + 1.3 * half, y: y + 0.75 * half },
        { x: x - 1.3 * half, y: y + 0.75 * half },
      ],
      closed: true,
      pen: 'medium',
      fill: 'white',
    },
    {
      kind: 'text',
      at: { x, y: y + 0.15 * half },
      text: revision,
      sizePt,
      face: 'bold',
      align: 'center',
      valign: 'middle',
    },
  ]
}

/** The least type of a sheet, which is the least that its authority reads. */
function leastTypePt(sheet: Sheet): number {
  const sizes = flattenSheet(sheet).marks.flatMap((mark) => (mark.kind === 'text' ? [mark.sizePt] : []))
  return Math.min(...sizes)
}
