import {
  boundsOf,
  CAP_HEIGHT,
  cornersOfMark,
  figuresOverlap,
  flattenSheet,
  LETTERS_ONLY,
  lieOn,
  makeGrid,
  obstaclesOf,
  strokesOf,
  POINTS_PER_INCH,
  textFigure,
  type Box,
  type Mark,
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

/** Cells by which the fill is counted, points. */
const CELL_PT = 18
/** Marks within so many cells fill a cell. */
const REACH = 1
/** Signs no larger than this are symbols. */
const SIGN_PT = 8
/** Smaller ones are dots at the ends of leaders, which stand on what they name. */
const DOT_PT = 1.5

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
  const obstacles = obstaclesOf(marks)
  return texts.flatMap((text) => {
    // The letters only, without the room for descenders.
    const { cuts, isOnQuiet, isOnFill } = lieOn(obstacles, textFigure(text, LETTERS_ONLY * text.sizePt))
    return [
      ...(cuts === undefined ? [] : [`${text.text} (${cuts.pen} line)`]),
      ...(isOnQuiet && !text.halo ? [`${text.text} (hatch)`] : []),
      ...(text.halo && isOnFill ? [`${text.text} (its ground hides an area)`] : []),
    ]
  })
}

function signsOverSigns(marks: readonly Mark[]): string[] {
  const grid = makeGrid<Extract<Mark, { kind: 'circle' }>>()
  return marks.flatMap((mark) => {
    if (mark.kind !== 'circle' || mark.radius > SIGN_PT || mark.radius < DOT_PT) return []
    const found = grid.near(boundsOfMark(mark)).filter(({ center, radius }) => {
      const apart = Math.hypot(center.x - mark.center.x, center.y - mark.center.y)
      // A junction dot on the terminal that it joins is one sign.
      const isJunction = radius !== mark.radius && apart < Math.max(radius, mark.radius)
      return apart < radius + mark.radius - 0.3 && !isJunction
    })
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
