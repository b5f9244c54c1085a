import { expand, type Placing } from './expand.js'
import type { Box, XY } from './geometry.js'
import { placeKeyed } from './keyed-notes.js'
import { roundedMark, type FlatSheet, type Mark, type Part } from './mark.js'
import { obstaclesOf } from './obstacles.js'
import { TextPlaces } from './place-texts.js'
import type { Belonging, Waiting } from './waiting.js'
import type { DrawnSymbol, Primitive } from './primitive.js'
import { onPaper, type Sheet } from './sheet.js'
import type { Tag } from './tag.js'

const done = new WeakMap<Sheet, FlatSheet>()
const doneExactly = new WeakMap<Sheet, FlatSheet>()

/**
 * Works out every mark of a sheet on paper, and finds places for the texts that may move.
 * Texts that may not move keep their place. The others take, in order, the best of their places: on nothing, on hatch, within
 * an area. What finds none stands aside with a line to what it names, or is a keyed note, unless it may be left out.
 * A sheet is worked out once.
 *
 * @param exact Whether figures keep their places as they were worked out, instead of to thousandths of a point.
 */
export function flattenSheet(sheet: Sheet, exact = false): FlatSheet {
  const kept = exact ? doneExactly : done
  const known = kept.get(sheet)
  if (known !== undefined) return known
  const figures: Mark[] = []
  const waiting: Waiting[] = []
  let order = 0
  const take = (primitives: Sheet['paper'], placing: Placing, within: Box, view?: number): void => {
    const figure: Tag | undefined =
      view === undefined ? undefined : { kind: 'Figure', says: sheet.viewports[view]?.says }
    const symbols = new Map<DrawnSymbol, Part>()
    for (const primitive of primitives) {
      const { marks, texts, part = symbolPart(primitive, placing, symbols) } = expand(primitive, placing)
      const belongs: Belonging = {
        ...(view === undefined ? {} : { view }),
        ...(part === undefined ? {} : { part }),
        ...partOfSheet(figure ?? primitive.tag, order++),
      }
      figures.push(...marks.map((mark) => ({ ...(exact ? mark : roundedMark(mark)), ...belongs })))
      waiting.push(...texts.map((each) => ({ ...each, within, belongs })))
    }
  }
  for (const [view, viewport] of sheet.viewports.entries()) {
    const point = (each: XY): XY => onPaper(viewport, each)
    take(viewport.primitives, { point, scale: viewport.scalePtPerFt, yUp: true }, viewport.box, view)
  }
  take(sheet.paper, { point: (each) => each, scale: 1, yUp: false }, sheet.frame)
  const { texts, leaders, collisions } = placeAll(figures, waiting, sheet.body ?? sheet.frame)
  const flat = { marks: [...figures, ...leaders, ...texts, ...overlayMarks(sheet, order, exact)], collisions }
  kept.set(sheet, flat)
  return flat
}

const partOfSheet = (tag: Tag | undefined, order: number): Belonging => (tag === undefined ? { order } : { tag, order })

/** The part that a primitive's symbol is on paper: the same object for all its primitives. */
function symbolPart({ symbol }: Primitive, placing: Placing, known: Map<DrawnSymbol, Part>): Part | undefined {
  if (symbol === undefined) return undefined
  const part = known.get(symbol) ?? { kind: 'symbol', name: symbol.name, at: placing.point(symbol.at) }
  known.set(symbol, part)
  return part
}

/** Marks that no text keeps clear of; their own texts stay where they are. They are read after all else. */
function overlayMarks({ overlay = [] }: Sheet, first: number, exact: boolean): Mark[] {
  const parts = overlay.map((each, index) => ({
    ...expand(each, { point: (point) => point, scale: 1, yUp: false }),
    belongs: partOfSheet(each.tag, first + index),
  }))
  const places = new TextPlaces(obstaclesOf([]), 0)
  const waiting = parts.flatMap(({ texts, belongs }) => texts.map((each) => ({ ...each, within: EVERYWHERE, belongs })))
  for (const [index, each] of waiting.entries()) places.fix(OVERLAY_BLOCKS + index, each)
  const figures = parts.flatMap(({ marks, belongs }) =>
    marks.map((mark) => ({ ...(exact ? mark : roundedMark(mark)), ...belongs })),
  )
  return [...figures, ...places.result().texts]
}

const EVERYWHERE: Box = { x: -1e6, y: -1e6, width: 2e6, height: 2e6 }
/** Numbers of blocks of the overlay lie past those of any sheet. */
const OVERLAY_BLOCKS = 1_000_000

function placeAll(
  figures: readonly Mark[],
  waiting: readonly Waiting[],
  body: Box,
): { texts: readonly Mark[]; leaders: readonly Mark[]; collisions: string[] } {
  const places = new TextPlaces(obstaclesOf(figures), figures.length)
  const collisions: string[] = []
  const numbered = [...waiting.entries()]
  const movable = numbered.filter(([, { text }]) => text.shifts !== undefined)
  for (const [index, each] of numbered) {
    if (each.text.shifts === undefined && !places.fix(index, each)) collisions.push(each.text.text)
  }
  const aside: [number, Waiting][] = []
  for (const [index, each] of movable.filter(([, { text }]) => text.optional !== true)) {
    if (each.text.aside === true || !places.settleBeside(index, each)) aside.push([index, each])
  }
  const keyed = aside.filter(([index, each]) => {
    const others = aside.filter(([other]) => other !== index).map(([, { at }]) => at)
    return !places.settleAside(index, each, others)
  })
  collisions.push(...placeKeyed(places, keyed, body).map(({ text }) => text.text))
  for (const [index, each] of movable.filter(([, { text }]) => text.optional === true)) places.settleBeside(index, each)
  return { ...places.result(), collisions }
}
