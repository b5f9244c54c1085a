import { radiansOf } from '../../values/index.js'
import { cornersOf, figuresOverlap, type Box, type XY } from './geometry.js'
import type { Obstacles } from './obstacles.js'

/** Angle below which a leader runs along a line, radians. */
const ALONG = radiansOf(20)
/** A shorter stroke is no line that could be taken for a leader, points. */
const LEAST_ALONG_PT = 8
/** How much nearer a box lies to what it names, points. */
const NEARER_PT = 1

/** From what a text names to the near end of its box. */
export function leaderLine(tip: XY, middle: XY, box: Box): [XY, XY] {
  const [dx, dy] = [middle.x - tip.x, middle.y - tip.y]
  const [half, high] = [box.width / 2 + 2, box.height / 2 + 1.5]
  // A text that stands above or below is met in the middle of its side.
  const end =
    Math.abs(dx) > half
      ? { x: middle.x - Math.sign(dx) * half, y: middle.y }
      : { x: middle.x, y: middle.y - Math.sign(dy) * high }
  return [tip, end]
}

/** Whether a box keeps to another, but for a margin. */
export function isInside(inner: Box, outer: Box, marginPt: number): boolean {
  const slack = marginPt + 0.1
  return (
    inner.x >= outer.x - slack &&
    inner.y >= outer.y - slack &&
    inner.x + inner.width <= outer.x + outer.width + slack &&
    inner.y + inner.height <= outer.y + outer.height + slack
  )
}

/** Whether a box lies nearer to one of some points than to its own, or as near. */
export function isNearer(others: readonly XY[], own: XY, box: Box): boolean {
  const distance = ({ x, y }: XY): number =>
    Math.hypot(Math.max(box.x - x, 0, x - box.x - box.width), Math.max(box.y - y, 0, y - box.y - box.height))
  const most = distance(own) + NEARER_PT
  return others.some((other) => distance(other) < most)
}

/** Whether a leader can hardly be told from a line that what it names lies on. */
export function runsAlong({ strokes }: Obstacles, [tip, end]: readonly [XY, XY]): boolean {
  const around = { x: tip.x - 0.5, y: tip.y - 0.5, width: 1, height: 1 }
  return strokes.near(around).some(({ points: [a, b], isQuiet }) => {
    const length = Math.hypot(b.x - a.x, b.y - a.y)
    if (isQuiet || length < LEAST_ALONG_PT || !figuresOverlap(cornersOf(around), [a, b], 0)) return false
    const across = ((b.x - a.x) * (end.y - tip.y) - (b.y - a.y) * (end.x - tip.x)) / length
    return Math.abs(across) < Math.sin(ALONG) * Math.hypot(end.x - tip.x, end.y - tip.y)
  })
}
