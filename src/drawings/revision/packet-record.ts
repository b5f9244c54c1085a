import { canonicalJson, digestOf } from '../../seal/index.js'
import {
  boundsOf,
  flattenSheet,
  onPaper,
  type Box,
  type Primitive,
  type Sheet,
  type Viewport,
  type XY,
} from '../model/index.js'

/** What a packet said when it was issued: enough to find later what changed. */
export interface PacketRecord {
  readonly format: typeof RECORD_FORMAT
  readonly project: string
  readonly revision: string
  readonly sheets: readonly SheetRecord[]
}

/** What one sheet said. */
export interface SheetRecord {
  readonly id: string
  readonly title: string
  /** Every text of the drawing with how often it stands there; names and dates of the title strip left out. */
  readonly texts: Readonly<Record<string, number>>
  /** Digests of the figures drawn to scale, in feet, with how often each is drawn. */
  readonly figures: Readonly<Record<string, number>>
}

export const RECORD_FORMAT = 'gablewatt-packet/1'

/** Something on a sheet that can change: what it says, and where it is on paper. */
export interface Item {
  readonly kind: 'text' | 'figure'
  readonly key: string
  readonly box: Box
}

/** Records the sheets of an issue. */
export function recordPacket(sheets: readonly Sheet[], project: string, revision: string): PacketRecord {
  return {
    format: RECORD_FORMAT,
    project,
    revision,
    sheets: sheets.map((sheet) => {
      const items = itemsOf(sheet)
      return { id: sheet.id, title: sheet.title, texts: counts(items, 'text'), figures: counts(items, 'figure') }
    }),
  }
}

function counts(items: readonly Item[], kind: Item['kind']): Record<string, number> {
  const counted = new Map<string, number>()
  for (const each of items) if (each.kind === kind) counted.set(each.key, (counted.get(each.key) ?? 0) + 1)
  return Object.fromEntries([...counted].toSorted(([a], [b]) => (a < b ? -1 : 1)))
}

/** Texts of the body of a sheet, and the figures of its drawings to scale. */
export function itemsOf(sheet: Sheet): Item[] {
  return [...textItems(sheet), ...sheet.viewports.flatMap(figureItems)]
}

function textItems(sheet: Sheet): Item[] {
  const body = sheet.body ?? sheet.frame
  const blocks = new Map<number, { readonly words: string[]; box: Box }>()
  for (const mark of flattenSheet({ ...sheet, overlay: [] }).marks) {
    if (mark.kind !== 'text' || mark.at.x > body.x + body.width) continue
    const turned = Math.abs(mark.rotationDeg % 180) > 45
    const size: [number, number] = turned ? [mark.sizePt, mark.widthPt] : [mark.widthPt, mark.sizePt]
    const corner = {
      x: turned ? mark.at.x - mark.sizePt : mark.at.x,
      y: mark.at.y - (turned && mark.rotationDeg < 0 ? 0 : size[1]),
    }
    const box = { ...corner, width: size[0], height: size[1] }
    const known = blocks.get(mark.block)
    if (known === undefined) blocks.set(mark.block, { words: [mark.text], box })
    else {
      known.words.push(mark.text)
      known.box = union(known.box, box)
    }
  }
  return [...blocks.values()].map(({ words, box }) => ({ kind: 'text', key: words.join(' ').trim(), box }))
}

/** Figures in the lengths of the thing itself, so that another place on paper is no change. */
function figureItems(viewport: Viewport): Item[] {
  return viewport.primitives.flatMap((primitive): Item[] => {
    const points = pointsOf(primitive)
    if (points.length === 0) return []
    const { pen, dash, color, fill, ...shape } = { pen: '', dash: '', color: '', fill: '', ...primitive }
    const key = digestOf([canonicalJson(JSON.parse(JSON.stringify({ shape, look: [pen, dash, color, fill] })))]).slice(
      0,
      16,
    )
    return [{ kind: 'figure', key, box: boundsOf(points.map((point) => onPaper(viewport, point))) }]
  })
}

/** Corners of a figure; none of a text, which is told as a text. */
function pointsOf(primitive: Primitive): readonly XY[] {
  switch (primitive.kind) {
    case 'path':
      return primitive.points
    case 'rectangle': {
      const { x, y, width, height } = primitive
      return [
        { x, y },
        { x: x + width, y: y + height },
      ]
    }
    case 'circle': {
      const { center, radius = 0 } = primitive
      return [
        { x: center.x - radius, y: center.y - radius },
        { x: center.x + radius, y: center.y + radius },
      ]
    }
    case 'dimension':
      return [primitive.from, primitive.to]
    case 'leader':
      return [primitive.tip]
    case 'text':
      return []
  }
}

export function union(a: Box, b: Box): Box {
  const [x, y] = [Math.min(a.x, b.x), Math.min(a.y, b.y)]
  return {
    x,
    y,
    width: Math.max(a.x + a.width, b.x + b.width) - x,
    height: Math.max(a.y + a.height, b.y + b.height) - y,
  }
}
