import type { Box, XY } from './geometry.js'

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
