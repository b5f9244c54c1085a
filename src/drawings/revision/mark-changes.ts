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
import type { SheetChange } from './changes-since.js'

/** From what changed to its cloud, points. */
const AROUND_PT = 4
/** Chord of an arc of a cloud, points. */
const ARC_PT = 9

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
