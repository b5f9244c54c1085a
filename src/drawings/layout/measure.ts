import {
  boundsOf,
  CAP_HEIGHT,
  cornersOf,
  figuresOverlap,
  flattenSheet,
  makeGrid,
  POINTS_PER_INCH,
  textFigure,
  type Box,
  type Mark,
  type Pen,
  type Sheet,
  type TextMark,
  type XY,
} from '../model/index.js'

/** What a reader with a lens finds on a sheet. */
export interface SheetMeasure {
  /** Pairs of texts that lie over each other. */
  readonly textOverText: readonly string[]
  /** What reaches over the frame. */
  readonly outsideFrame: readonly string[]
  /** Texts that a line of the drawing runs through, or whose white ground cuts a line or an area that means something. */
  readonly textOverLine: readonly string[]
  /** Small round signs that lie over each other. */
  readonly signOverSign: readonly string[]
  /** Height of the lowest capitals, inches; undefined on a sheet without text. */
  readonly leastCapitalIn: number | undefined
  /** Share of the room for the drawing that lies within a finger's width of a mark. */
  readonly fill: number
}

interface Stroke {
  readonly points: readonly [XY, XY]
  readonly pen: Pen
  /** Whether a text with a white ground may cut it: hatch, rafters and other hair lines in grey or dashes. */
  readonly isQuiet: boolean
  /** Place in the order of drawing. */
  readonly order: number
}

/** Cells by which the fill is counted, points. */
const CELL_PT = 18
/** Marks within so many cells fill a cell. */
const REACH = 1
/** Signs no larger than this are symbols. */
const SIGN_PT = 8

/** Measures a composed sheet. */
export function measureSheet(sheet: Sheet): SheetMeasure {
  const { marks } = flattenSheet(sheet)
  const texts = marks.filter((mark): mark is TextMark => mark.kind === 'text' && mark.text.trim() !== '')
  const sizes = texts.map((text) => text.sizePt)
  return {
    textOverText: textsOverText(texts),
    outsideFrame: marks.filter((mark) => !isWithin(boundsOfMark(mark), sheet.frame)).map(nameOf),
    textOverLine: textsOverLines(marks, texts),
    signOverSign: signsOverSigns(marks),
    leastCapitalIn: sizes.length === 0 ? undefined : (Math.min(...sizes) * CAP_HEIGHT) / POINTS_PER_INCH,
    fill: fillOf(marks, sheet.body ?? sheet.frame),
  }
}

/** Everything of a measure that nobody may find on an issued sheet, in words. */
export function overprints(measure: SheetMeasure): string[] {
  return [
    ...measure.textOverText.map((each) => `text over text: ${each}`),
    ...measure.outsideFrame.map((each) => `out of the frame: ${each}`),
    ...measure.textOverLine.map((each) => `line and text: ${each}`),
    ...measure.signOverSign.map((each) => `sign over sign: ${each}`),
  ]
}

function textsOverText(texts: readonly TextMark[]): string[] {
  const grid = makeGrid<{ readonly text: TextMark; readonly figure: XY[]; readonly order: number }>()
  return texts.flatMap((text, order) => {
    const figure = textFigure(text)
    const box = boundsOf(figure)
    const found = grid
      .near(box)
      .filter((other) => other.text.block !== text.block && figuresOverlap(figure, other.figure, 0.3))
    grid.add(box, { text, figure, order })
    return found.map((other) => `${other.text.text} / ${text.text}`)
  })
}

function textsOverLines(marks: readonly Mark[], texts: readonly TextMark[]): string[] {
  const strokes = makeGrid<Stroke>()
  const grounds = makeGrid<{ readonly figure: readonly XY[]; readonly order: number; readonly isWhite: boolean }>()
  for (const [order, mark] of marks.entries()) {
    for (const stroke of strokesOf(mark, order)) strokes.add(boundsOf(stroke.points), stroke)
    if (mark.kind === 'text' || mark.fill === undefined) continue
    const figure = cornersOfMark(mark)
    grounds.add(boundsOf(figure), { figure, order, isWhite: mark.fill === 'white' })
  }
  return texts.flatMap((text) => {
    // The letters only, without the room for descenders.
    const figure = textFigure(text, -0.12 * text.sizePt)
    const box = boundsOf(figure)
    const below = grounds.near(box).filter((ground) => figure.every((point) => isInFigure(point, ground.figure)))
    const top = Math.max(-1, ...below.map(({ order }) => order))
    const cut = strokes
      .near(box)
      .filter((stroke) => stroke.order > top && !(text.halo && stroke.isQuiet))
      .filter((stroke) => figuresOverlap(figure, stroke.points, 0.05))
    const isErased =
      text.halo && grounds.near(box).some((each) => !each.isWhite && figuresOverlap(figure, each.figure, 0.3))
    return [
      ...cut.slice(0, 1).map(({ pen }) => `${text.text} (${pen} line)`),
      ...(isErased ? [`${text.text} (its ground hides an area)`] : []),
    ]
  })
}

function signsOverSigns(marks: readonly Mark[]): string[] {
  const grid = makeGrid<{ readonly center: XY; readonly radius: number }>()
  return marks.flatMap((mark) => {
    if (mark.kind !== 'circle' || mark.radius > SIGN_PT) return []
    const found = grid
      .near(boundsOfMark(mark))
      .filter(
        ({ center, radius }) =>
          Math.hypot(center.x - mark.center.x, center.y - mark.center.y) < radius + mark.radius - 0.3,
      )
    grid.add(boundsOfMark(mark), mark)
    return found.map(() => `${nameOf(mark)} on another`)
  })
}

function fillOf(marks: readonly Mark[], room: Box): number {
  const [across, down] = [Math.ceil(room.width / CELL_PT), Math.ceil(room.height / CELL_PT)]
  const cells = new Set<number>()
  const take = (box: Box): void => {
    const from = (low: number, start: number): number => Math.floor((low - start) / CELL_PT) - REACH
    for (let row = Math.max(0, from(box.y, room.y)); row <= from(box.y + box.height, room.y) + 2 * REACH; row++) {
      if (row >= down) break
      for (let column = Math.max(0, from(box.x, room.x)); column < across; column++) {
        if (column > from(box.x + box.width, room.x) + 2 * REACH) break
        cells.add(row * across + column)
      }
    }
  }
  for (const mark of marks) {
    if (mark.kind === 'text' || mark.kind === 'circle') take(boundsOfMark(mark))
    else if (mark.fill !== undefined && mark.fill !== 'white') take(boundsOfMark(mark))
    else for (const { points } of strokesOf(mark, 0)) for (const piece of piecesOf(points)) take(boundsOf(piece))
  }
  return cells.size / (across * down)
}

/** A slanting line as short pieces, so that it does not fill the box round it. */
function piecesOf([a, b]: readonly [XY, XY]): [XY, XY][] {
  const steps = a.x === b.x || a.y === b.y ? 1 : Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / CELL_PT)
  const at = (step: number): XY => ({
    x: a.x + ((b.x - a.x) * step) / steps,
    y: a.y + ((b.y - a.y) * step) / steps,
  })
  return Array.from({ length: steps }, (_, step) => [at(step), at(step + 1)])
}

function strokesOf(mark: Mark, order: number): Stroke[] {
  if (mark.kind === 'text' || mark.pen === undefined) return []
  const points = cornersOfMark(mark)
  const closed = mark.kind !== 'path' || mark.closed
  const { pen } = mark
  const isQuiet = (pen === 'hair' && (mark.color !== 'black' || mark.dash !== 'solid')) || mark.color === 'mid'
  return points.flatMap((point, index): Stroke[] => {
    const next = points[index + 1] ?? (closed ? points[0] : undefined)
    return next === undefined ? [] : [{ points: [point, next], pen, isQuiet, order }]
  })
}

function cornersOfMark(mark: Exclude<Mark, TextMark>): readonly XY[] {
  if (mark.kind === 'path') return mark.points
  if (mark.kind === 'rectangle') return cornersOf(mark)
  return Array.from({ length: 16 }, (_, index) => ({
    x: mark.center.x + mark.radius * Math.cos((index * Math.PI) / 8),
    y: mark.center.y + mark.radius * Math.sin((index * Math.PI) / 8),
  }))
}

const boundsOfMark = (mark: Mark): Box => boundsOf(mark.kind === 'text' ? textFigure(mark) : cornersOfMark(mark))

function isWithin(inner: Box, outer: Box): boolean {
  const slack = 0.8
  return (
    inner.x >= outer.x - slack &&
    inner.y >= outer.y - slack &&
    inner.x + inner.width <= outer.x + outer.width + slack &&
    inner.y + inner.height <= outer.y + outer.height + slack
  )
}

function nameOf(mark: Mark): string {
  if (mark.kind === 'text') return mark.text
  const { x, y } = boundsOfMark(mark)
  return `${mark.kind} at ${x.toFixed(0)}, ${y.toFixed(0)}`
}

function isInFigure(point: XY, figure: readonly XY[]): boolean {
  let inside = false
  for (const [index, a] of figure.entries()) {
    const b = figure[(index + 1) % figure.length] ?? a
    if (a.y > point.y === b.y > point.y) continue
    if (a.x + ((point.y - a.y) / (b.y - a.y)) * (b.x - a.x) > point.x) inside = !inside
  }
  return inside
}

