import { containsPoint, convexOverlap, type Point } from '../../values/index.js'

/** A point: feet with y up in a viewport, points with y down on paper. */
export interface XY {
  readonly x: number
  readonly y: number
}

/** An upright box on paper, points, y down. */
export interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export const xy = (x: number, y: number): XY => ({ x, y })

/** Shrinks a box by the same distance on all sides. */
export function inset(box: Box, byPt: number): Box {
  return { x: box.x + byPt, y: box.y + byPt, width: box.width - 2 * byPt, height: box.height - 2 * byPt }
}

/** Corners of an upright box, clockwise on paper from the upper left. */
export function cornersOf({ x, y, width, height }: Box): XY[] {
  return [xy(x, y), xy(x + width, y), xy(x + width, y + height), xy(x, y + height)]
}

/** The smallest upright box round some points. */
export function boundsOf(points: readonly XY[]): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const { x, y } of points) {
    left = Math.min(left, x)
    right = Math.max(right, x)
    top = Math.min(top, y)
    bottom = Math.max(bottom, y)
  }
  return { x: left, y: top, width: right - left, height: bottom - top }
}

/** Whether two convex figures on paper overlap by more than a touch. */
export function figuresOverlap(first: readonly XY[], second: readonly XY[], slackPt = 0.05): boolean {
  const plain = (figure: readonly XY[]) => figure.map(({ x, y }) => ({ xFt: x, yFt: y }))
  return convexOverlap(plain(first), plain(second), slackPt)
}

/** A figure on paper in the terms of the polygons that every trade uses. */
export type Outline = readonly Point[]

/** Makes one of its corners. */
export function outlineOf(figure: readonly XY[]): Outline {
  return figure.map(({ x, y }) => ({ xFt: x, yFt: y }))
}

/** Whether a point lies inside an outline of any shape. */
export function isInOutline({ x, y }: XY, outline: Outline): boolean {
  return containsPoint(outline, { xFt: x, yFt: y })
}
