import { expand, type PlacedText, type Placing } from './expand.js'
import { boundsOf, figuresOverlap, type Box, type XY } from './geometry.js'
import type { FlatSheet, Mark, TextMark } from './mark.js'
import { onPaper, type Sheet } from './sheet.js'
import { textFigure, textMarks } from './text-block.js'

interface Waiting extends PlacedText {
  readonly within: Box
}

/**
 * Works out every mark of a sheet on paper, and finds places for the texts that may move.
 * Texts that may not move keep their place; the others take, in order, the first of their places that is free.
 */
export function flattenSheet(sheet: Sheet): FlatSheet {
  const figures: Mark[] = []
  const waiting: Waiting[] = []
  const take = (primitives: Sheet['paper'], placing: Placing, within: Box): void => {
    for (const primitive of primitives) {
      const { marks, texts } = expand(primitive, placing)
      figures.push(...marks)
      waiting.push(...texts.map((each) => ({ ...each, within })))
    }
  }
  for (const viewport of sheet.viewports) {
    const point = (each: XY): XY => onPaper(viewport, each)
    take(viewport.primitives, { point, scale: viewport.scalePtPerFt, yUp: true }, viewport.box)
  }
  take(sheet.paper, { point: (each) => each, scale: 1, yUp: false }, sheet.frame)
  const { texts, collisions } = placeTexts(waiting)
  return { marks: [...figures, ...texts], collisions }
}

function placeTexts(waiting: readonly Waiting[]): { texts: TextMark[]; collisions: string[] } {
  const placed = new Map<number, TextMark[]>()
  const taken: { box: Box; figure: XY[] }[] = []
  const collisions: string[] = []
  const settle = (index: number, marks: TextMark[]): void => {
    placed.set(index, marks)
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
