import { containsPoint, distanceToSegmentFt, segmentsOf, type Point } from '../../values/index.js'
import { boundsOf, type Box, type XY } from '../model/index.js'

/** A figure that hides what was drawn before it. */
export interface Mask {
  readonly figure: readonly XY[]
  readonly box: Box
}

export const maskOf = (figure: readonly XY[]): Mask => ({ figure, box: boundsOf(figure) })

/** A line that lies no farther inside a figure than this is not hidden by it, points. */
const EDGE_PT = 0.05

/**
 * What is left of a line that figures lie over.
 *
 * @returns the line itself when nothing of it is hidden, else its pieces, open.
 */
export function cutAway(
  points: readonly XY[],
  closed: boolean,
  masks: readonly Mask[],
): { readonly points: readonly XY[]; readonly closed: boolean }[] {
  const box = boundsOf(points)
  const near = masks.filter((mask) => touches(box, mask.box))
  const ring = closed ? [...points, ...points.slice(0, 1)] : points
  let isWhole = true
  const pieces: XY[][] = []
  let piece: XY[] = []
  const end = (): void => {
    if (piece.length > 1) pieces.push(piece)
    piece = []
  }
  for (const [index, to] of ring.entries()) {
    const from = ring[index - 1]
    if (from === undefined) continue
    for (const [start, stop, hidden] of parts(from, to, near)) {
      if (hidden) {
        isWhole = false
        end()
        continue
      }
      if (piece.length === 0) piece.push(start)
      piece.push(stop)
    }
  }
  end()
  if (isWhole) return [{ points, closed }]
  return pieces
    .map((each) => ({ points: withoutRepeats(each), closed: false }))
    .filter((each) => each.points.length > 1)
}

/** A straight line in parts that are wholly hidden or wholly shown. */
function parts(from: XY, to: XY, masks: readonly Mask[]): [XY, XY, boolean][] {
  const at = (share: number): XY => ({ x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) })
  const shares = [0, ...masks.flatMap(({ figure }) => crossings(from, to, figure)).toSorted((a, b) => a - b), 1]
  return shares.slice(1).flatMap((stop, index): [XY, XY, boolean][] => {
    const start = shares[index] ?? 0
    if (stop - start < 1e-9) return []
    const middle = at((start + stop) / 2)
    return [[start === 0 ? from : at(start), stop === 1 ? to : at(stop), masks.some((mask) => covers(mask, middle))]]
  })
}

/** Shares of a line at which it crosses the outline of a figure. */
function crossings(from: XY, to: XY, figure: readonly XY[]): number[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  return figure.flatMap((a, index) => {
    const b = figure[(index + 1) % figure.length] ?? a
    const [ex, ey] = [b.x - a.x, b.y - a.y]
    const turn = dx * ey - dy * ex
    if (turn === 0) return []
    const share = ((a.x - from.x) * ey - (a.y - from.y) * ex) / turn
    const along = ((a.x - from.x) * dy - (a.y - from.y) * dx) / turn
    return share > 0 && share < 1 && along >= 0 && along <= 1 ? [share] : []
  })
}

/** Whether a figure lies over a point, and not just touches it. */
function covers({ figure, box }: Mask, point: XY): boolean {
  const { x, y } = point
  return x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height && isInside(point, figure)
}

const plain = ({ x, y }: XY): Point => ({ xFt: x, yFt: y })

/** Whether a point lies inside a figure and not at its edge. */
export function isInside(point: XY, figure: readonly XY[]): boolean {
  const corners = figure.map(plain)
  return (
    containsPoint(corners, plain(point)) &&
    segmentsOf(corners).every((edge) => distanceToSegmentFt(plain(point), edge) >= EDGE_PT)
  )
}

const touches = (a: Box, b: Box): boolean =>
  a.x <= b.x + b.width && b.x <= a.x + a.width && a.y <= b.y + b.height && b.y <= a.y + a.height

/** Leaves out points that lie on the way between their neighbours. */
function withoutRepeats(points: readonly XY[]): XY[] {
  return points.filter((point, index) => {
    const [before, after] = [points[index - 1], points[index + 1]]
    return (
      before === undefined ||
      after === undefined ||
      distanceToSegmentFt(plain(point), [plain(before), plain(after)]) > 1e-6
    )
  })
}
