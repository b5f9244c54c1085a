import { canonicalJson, digestOf } from '../../seal/index.js'
import {
  boundsOf,
  cornersOfMark,
  flattenSheet,
  onPaper,
  xy,
  type Box,
  type LayerKey,
  type Mark,
  type Primitive,
  type Sheet,
  type Viewport,
  type XY,
} from '../model/index.js'

/** What a packet said when it was issued: enough to find later what changed. */
export interface PacketRecord {
  readonly format: (typeof RECORD_FORMATS)[number]
  readonly project: string
  readonly revision: string
  readonly sheets: readonly SheetRecord[]
}

/** What one sheet said. */
export interface SheetRecord {
  readonly id: string
  readonly title: string
  /** Name of its paper; places are told on it. Missing in records of the first format, which have counts only. */
  readonly paper?: string
  /** Every text of the drawing with where it stands; names and dates of the title strip left out. */
  readonly texts: Stood
  /** Digests of the figures drawn to scale, in feet, with where each is drawn. */
  readonly figures: Stood
  /** Digests of the lines of diagrams by form and length, wherever they run. */
  readonly lines?: Stood
}

/** Where each of them stood, or how often as the first format has it. */
type Stood = Readonly<Record<string, number | readonly Place[]>>

/** A box: ft in the drawing to scale of that number, or points of paper when the number is -1. */
type Place = readonly [view: number, x: number, y: number, width: number, height: number]

export const RECORD_FORMAT = 'gablewatt-packet/2'
/** Formats that are read: the first has no places. */
export const RECORD_FORMATS = ['gablewatt-packet/1', RECORD_FORMAT] as const

const KINDS = ['text', 'figure', 'line'] as const

/** Something on a sheet that can change: what it says, and where it is on paper. */
export interface Item {
  readonly kind: (typeof KINDS)[number]
  readonly key: string
  readonly box: Box
  /** Number of the drawing to scale that it belongs to. */
  readonly view?: number | undefined
}

/** Something of an earlier issue: on which sheet it was, and where; nowhere when the record tells no places. */
export interface Kept extends Pick<Item, 'kind' | 'key'> {
  readonly id: string
  readonly paper: string | undefined
  readonly place: Place | undefined
}

/** Records the sheets of an issue. */
export function recordPacket(sheets: readonly Sheet[], project: string, revision: string): PacketRecord {
  return {
    format: RECORD_FORMAT,
    project,
    revision,
    sheets: sheets.map((sheet) => {
      const items = itemsOf(sheet)
      const [texts = {}, figures = {}, lines = {}] = KINDS.map((kind) => placesOf(sheet, items, kind))
      return { id: sheet.id, title: sheet.title, paper: sheet.size.name, texts, figures, lines }
    }),
  }
}

/** Everything that a sheet of an earlier issue had. */
export function kept({ id, paper, texts, figures, lines }: SheetRecord): Kept[] {
  const all = { text: texts, figure: figures, line: lines ?? {} }
  return KINDS.flatMap((kind) =>
    Object.entries(all[kind]).flatMap(([key, stood]): Kept[] => {
      const places = typeof stood === 'number' ? Array.from({ length: stood }, () => undefined) : stood
      return places.map((place) => ({ kind, key, id, paper, place }))
    }),
  )
}

/** Where something of an earlier issue would stand on the sheet as it is now; undefined when nobody can tell. */
export function boxNow({ place, paper }: Kept, sheet: Sheet): Box | undefined {
  if (place === undefined) return undefined
  const [view, x, y, width, height] = place
  if (view === ON_PAPER) return paper === sheet.size.name ? { x, y, width, height } : undefined
  const viewport = sheet.viewports[view]
  return viewport === undefined
    ? undefined
    : boundsOf([xy(x, y), xy(x + width, y + height)].map((at) => onPaper(viewport, at)))
}

const ON_PAPER = -1

function placesOf(sheet: Sheet, items: readonly Item[], kind: Item['kind']): Record<string, Place[]> {
  const found = new Map<string, Place[]>()
  for (const each of items) {
    if (each.kind === kind) found.set(each.key, [...(found.get(each.key) ?? []), placeOf(sheet, each)])
  }
  return Object.fromEntries([...found].toSorted(([a], [b]) => (a < b ? -1 : 1)))
}

function placeOf({ viewports }: Sheet, { box, view }: Item): Place {
  const viewport = view === undefined ? undefined : viewports[view]
  const round = (value: number): number => Math.round(value * 100) / 100 + 0
  if (view === undefined || viewport === undefined)
    return [ON_PAPER, round(box.x), round(box.y), round(box.width), round(box.height)]
  const { originPt, scalePtPerFt: scale } = viewport
  return [
    view,
    round((box.x - originPt.x) / scale),
    round((originPt.y - box.y - box.height) / scale),
    round(box.width / scale),
    round(box.height / scale),
  ]
}

/** Texts of the body of a sheet, the figures of its drawings to scale, and the lines of its diagrams. */
export function itemsOf(sheet: Sheet): Item[] {
  const { marks } = flattenSheet(sheet.overlay === undefined ? sheet : { ...sheet, overlay: [] })
  return [
    ...textItems(sheet, marks),
    ...sheet.viewports.flatMap((viewport, view) => figureItems(viewport).map((item) => ({ ...item, view }))),
    ...lineItems(marks),
  ]
}

/** Layers of diagrams, which are not to scale. */
const DIAGRAM: ReadonlySet<LayerKey> = new Set(['oneLine', 'oneLineExisting', 'ground'])

/** Lines and symbols of a diagram by form, length and look, so that one that only moves is no change. */
function lineItems(marks: readonly Mark[]): Item[] {
  return marks.flatMap((mark): Item[] => {
    if (mark.kind === 'text' || mark.kind === 'hatch' || mark.view !== undefined || !DIAGRAM.has(mark.layer)) return []
    const corners = cornersOfMark(mark)
    const box = boundsOf(corners)
    const round = (value: number): number => Math.round(value * 10) / 10 + 0
    const form = corners.map(({ x, y }) => [round(x - box.x), round(y - box.y)])
    const { layer, pen, dash, color, fill } = mark
    const key = digestOf([canonicalJson([mark.kind, form, layer, pen ?? '', dash, color, fill ?? ''])]).slice(0, 16)
    return [{ kind: 'line', key, box }]
  })
}

function textItems(sheet: Sheet, marks: readonly Mark[]): Item[] {
  const body = sheet.body ?? sheet.frame
  const blocks = new Map<number, { readonly words: string[]; box: Box; readonly view: number | undefined }>()
  for (const mark of marks) {
    if (mark.kind !== 'text' || mark.at.x > body.x + body.width) continue
    const turned = Math.abs(mark.rotationDeg % 180) > 45
    const size: [number, number] = turned ? [mark.sizePt, mark.widthPt] : [mark.widthPt, mark.sizePt]
    const corner = {
      x: turned ? mark.at.x - mark.sizePt : mark.at.x,
      y: mark.at.y - (turned && mark.rotationDeg < 0 ? 0 : size[1]),
    }
    const box = { ...corner, width: size[0], height: size[1] }
    const known = blocks.get(mark.block)
    if (known === undefined) blocks.set(mark.block, { words: [mark.text], box, view: mark.view })
    else {
      known.words.push(mark.text)
      known.box = union(known.box, box)
    }
  }
  return [...blocks.values()].map(({ words, box, view }) => ({ kind: 'text', key: words.join(' ').trim(), box, view }))
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
