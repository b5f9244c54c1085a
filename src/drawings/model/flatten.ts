import { expand, type PlacedText, type Placing } from './expand.js'
import { boundsOf, figuresOverlap, type Box, type XY } from './geometry.js'
import { roundedMark, type FlatSheet, type Mark, type Part, type TextMark } from './mark.js'
import type { DrawnSymbol, Primitive } from './primitive.js'
import { onPaper, type Sheet } from './sheet.js'
import type { Tag } from './tag.js'
import { textFigure, textMarks } from './text-block.js'

interface Waiting extends PlacedText {
  readonly within: Box
  readonly belongs: Pick<TextMark, 'view' | 'part' | 'tag' | 'order'>
}

/**
 * Works out every mark of a sheet on paper, and finds places for the texts that may move.
 * Texts that may not move keep their place; the others take, in order, the first of their places that is free.
 *
 * @param exact Whether figures keep their places as they were worked out, instead of to thousandths of a point.
 */
export function flattenSheet(sheet: Sheet, exact = false): FlatSheet {
  const figures: Mark[] = []
  const waiting: Waiting[] = []
  let order = 0
  const take = (primitives: Sheet['paper'], placing: Placing, within: Box, view?: number): void => {
    const figure: Tag | undefined =
      view === undefined ? undefined : { kind: 'Figure', says: sheet.viewports[view]?.says }
    const symbols = new Map<DrawnSymbol, Part>()
    for (const primitive of primitives) {
      const { marks, texts, part = symbolPart(primitive, placing, symbols) } = expand(primitive, placing)
      const belongs = {
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
  const { texts, collisions } = placeTexts(waiting)
  return { marks: [...figures, ...texts], collisions }
}

const partOfSheet = (tag: Tag | undefined, order: number): Pick<TextMark, 'tag' | 'order'> =>
  tag === undefined ? { order } : { tag, order }

/** The part that a primitive's symbol is on paper: the same object for all its primitives. */
function symbolPart({ symbol }: Primitive, placing: Placing, known: Map<DrawnSymbol, Part>): Part | undefined {
  if (symbol === undefined) return undefined
  const part = known.get(symbol) ?? { kind: 'symbol', name: symbol.name, at: placing.point(symbol.at) }
  known.set(symbol, part)
  return part
}

function placeTexts(waiting: readonly Waiting[]): { texts: TextMark[]; collisions: string[] } {
  const placed = new Map<number, TextMark[]>()
  const taken: { box: Box; figure: XY[] }[] = []
  const collisions: string[] = []
  const settle = (index: number, marks: TextMark[]): void => {
    const belongs = waiting[index]?.belongs
    placed.set(
      index,
      marks.map((mark) => ({ ...mark, ...belongs })),
    )
    for (const mark of marks) {
      const figure = textFigure(mark, 0.6)
      taken.push({ box: boundsOf(figure), figure })
    }
  }
  const free = (marks: readonly TextMark[], within: Box): boolean =>
    marks.every((mark) => {
      const figure = textFigure(mark, 0.6)
      const box = boundsOf(figure)
      return (
        isInside(box, within) && !taken.some((other) => touches(box, other.box) && figuresOverlap(figure, other.figure))
      )
    })
  for (const [index, { text, at, within }] of waiting.entries()) {
    if (text.shifts !== undefined) continue
    const marks = textMarks(text, at, index)
    if (!free(marks, within)) collisions.push(text.text)
    settle(index, marks)
  }
  for (const [index, { text, at, within }] of waiting.entries()) {
    if (text.shifts === undefined) continue
    const tries = (text.shifts.length === 0 ? [{ x: 0, y: 0 }] : text.shifts).map((shift) =>
      textMarks(text, { x: at.x + shift.x, y: at.y + shift.y }, index),
    )
    const found = tries.find((marks) => free(marks, within))
    if (found !== undefined) settle(index, found)
    else if (text.optional !== true) {
      collisions.push(text.text)
      settle(index, tries[0] ?? [])
    }
  }
  return { texts: waiting.flatMap((_, index) => placed.get(index) ?? []), collisions }
}

function touches(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height
}

/** Whether a box keeps to another, but for the margin of the text. */
function isInside(inner: Box, outer: Box): boolean {
  return (
    inner.x >= outer.x - 0.7 &&
    inner.y >= outer.y - 0.7 &&
    inner.x + inner.width <= outer.x + outer.width + 0.7 &&
    inner.y + inner.height <= outer.y + outer.height + 0.7
  )
}
