import type { Point } from '../../roof/index.js'
import { xy, type Box, type XY } from '../model/index.js'

/** Plane points, ft, as points of a viewport. */
export const toXY = ({ xFt, yFt }: Point): XY => xy(xFt, yFt)

/** The part of any polygon that lies inside a convex one (Sutherland and Hodgman), counter-clockwise clip. */
export function clippedTo(subject: readonly XY[], convex: readonly XY[]): XY[] {
  let figure = [...subject]
  const clip = isCounterClockwise(convex) ? convex : convex.toReversed()
  for (const [index, a] of clip.entries()) {
    const b = clip[(index + 1) % clip.length] ?? a
    const side = (point: XY): number => (b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x)
    figure = figure.flatMap((point, at) => {
      const next = figure[(at + 1) % figure.length] ?? point
      const [here, there] = [side(point), side(next)]
      const kept = here >= 0 ? [point] : []
      if (here >= 0 === there >= 0) return kept
      const share = here / (here - there)
      return [...kept, xy(point.x + share * (next.x - point.x), point.y + share * (next.y - point.y))]
    })
  }
  return figure
}

function isCounterClockwise(points: readonly XY[]): boolean {
  return (
    points.reduce((sum, a, index) => {
      const b = points[(index + 1) % points.length] ?? a
      return sum + a.x * b.y - b.x * a.y
    }, 0) > 0
  )
}

/** The pieces of an upright line that lie inside a polygon, from bottom to top. */
export function uprightInside(polygon: readonly XY[], x: number): [XY, XY][] {
  const cuts = polygon.flatMap((a, index) => {
    const b = polygon[(index + 1) % polygon.length] ?? a
    if (a.x > x === b.x > x) return []
    return [a.y + ((x - a.x) / (b.x - a.x)) * (b.y - a.y)]
  })
  cuts.sort((one, other) => one - other)
  return Array.from({ length: Math.floor(cuts.length / 2) }, (_, pair) => [
    xy(x, cuts[2 * pair] ?? 0),
    xy(x, cuts[2 * pair + 1] ?? 0),
  ])
}

/** The part of a line within a box. */
export function clippedLine([a, b]: readonly [XY, XY], box: Box): [XY, XY] | undefined {
  let [from, to] = [0, 1]
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  for (const [step, room] of [
    [-dx, a.x - box.x],
    [dx, box.x + box.width - a.x],
    [-dy, a.y - box.y],
    [dy, box.y + box.height - a.y],
  ] as const) {
    if (step === 0) {
      if (room < 0) return undefined
    } else if (step < 0) from = Math.max(from, room / step)
    else to = Math.min(to, room / step)
  }
  return from >= to ? undefined : [xy(a.x + from * dx, a.y + from * dy), xy(a.x + to * dx, a.y + to * dy)]
}
