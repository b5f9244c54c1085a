import {
  boundsOf,
  cornersOf,
  figuresOverlap,
  isInOutline,
  outlineOf,
  type Box,
  type Outline,
  type XY,
} from './geometry.js'
import { makeGrid, type Grid } from './grid.js'
import type { Mark, TextMark } from './mark.js'
import type { Pen } from './pens.js'

/** A straight piece of a figure as drawn. */
export interface Stroke {
  readonly points: readonly [XY, XY]
  readonly pen: Pen
  /** Whether a text with a white ground may cut it: hatch, rafters and other hair lines in grey or dashes. */
  readonly isQuiet: boolean
  /** Place in the order of drawing. */
  readonly order: number
}

/** A filled figure: what lies below it is hidden. */
export interface Ground {
  readonly outline: Outline
  readonly isWhite: boolean
  readonly order: number
}

/** What is drawn on a sheet and a text has to keep clear of. */
export interface Obstacles {
  readonly strokes: Grid<Stroke>
  readonly grounds: Grid<Ground>
}

/** How a text would lie on the drawing. */
export interface Lie {
  /** The line that runs through the letters and may not be cut. */
  readonly cuts: Stroke | undefined
  /** Whether hatch or other quiet lines lie under it. */
  readonly isOnQuiet: boolean
  /** Whether a filled area lies under a part of it. */
  readonly isOnFill: boolean
}

/** Room for the descenders that lines may run through, share of the height of type. */
export const LETTERS_ONLY = -0.12

/** Strokes and filled figures of marks, found by place. */
export function obstaclesOf(marks: readonly Mark[]): Obstacles {
  const obstacles: Obstacles = { strokes: makeGrid(), grounds: makeGrid() }
  for (const [order, mark] of marks.entries()) addObstacle(obstacles, mark, order)
  return obstacles
}

/** Adds what a mark draws. */
export function addObstacle({ strokes, grounds }: Obstacles, mark: Mark, order: number): void {
  for (const stroke of strokesOf(mark, order)) strokes.add(boundsOf(stroke.points), stroke)
  if (mark.kind === 'text' || mark.fill === undefined) return
  const figure = cornersOfMark(mark)
  grounds.add(boundsOf(figure), { outline: outlineOf(figure), order, isWhite: mark.fill === 'white' })
}

/** How a figure that a text covers lies on the drawing; what a filled figure hides under all of it does not count. */
export function lieOn({ strokes, grounds }: Obstacles, figure: readonly XY[]): Lie {
  const box = boundsOf(figure)
  const below = grounds.near(box).filter((ground) => figure.every((point) => isInOutline(point, ground.outline)))
  const top = Math.max(-1, ...below.map(({ order }) => order))
  const crossing = strokes
    .near(box)
    .filter((stroke) => stroke.order > top && figuresOverlap(figure, stroke.points, 0.05))
  const spots = [...figure, middleOf(box)]
  return {
    cuts: crossing.find((stroke) => !stroke.isQuiet),
    isOnQuiet: crossing.some((stroke) => stroke.isQuiet),
    isOnFill: grounds
      .near(box)
      .some(
        (ground) => !ground.isWhite && ground.order >= top && spots.some((point) => isInOutline(point, ground.outline)),
      ),
  }
}

/** Straight pieces of a figure; none of a text. */
export function strokesOf(mark: Mark, order: number): Stroke[] {
  if (mark.kind === 'text' || mark.pen === undefined) return []
  const points = cornersOfMark(mark)
  const closed = mark.kind !== 'path' || mark.closed
  const { pen } = mark
  const isQuiet = pen === 'hair' && (mark.color !== 'black' || mark.dash !== 'solid')
  return points.flatMap((point, index): Stroke[] => {
    const next = points[index + 1] ?? (closed ? points[0] : undefined)
    return next === undefined ? [] : [{ points: [point, next], pen, isQuiet, order }]
  })
}

/** Corners of a figure, a circle as sixteen. */
export function cornersOfMark(mark: Exclude<Mark, TextMark>): readonly XY[] {
  if (mark.kind === 'path') return mark.points
  if (mark.kind === 'rectangle') return cornersOf(mark)
  return Array.from({ length: 16 }, (_, index) => ({
    x: mark.center.x + mark.radius * Math.cos((index * Math.PI) / 8),
    y: mark.center.y + mark.radius * Math.sin((index * Math.PI) / 8),
  }))
}

const middleOf = ({ x, y, width, height }: Box): XY => ({ x: x + width / 2, y: y + height / 2 })
