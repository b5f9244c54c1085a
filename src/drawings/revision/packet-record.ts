import { boundsOf, onPaper, xy, type Box, type Sheet } from '../model/index.js'
import { itemsOf, KINDS, type Item } from './sheet-items.js'

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
