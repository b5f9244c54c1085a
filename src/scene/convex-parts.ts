import earcut from 'earcut'
import type { Point as PlanePoint } from '../values/index.js'
import { signedAreaFt2, TOLERANCE_FT } from '../values/index.js'

/**
 * A simple figure as convex parts, counter-clockwise: itself where it is convex, triangles otherwise.
 *
 * @param corners In order round the figure, either way.
 * @returns None where the figure has no area.
 */
export function convexParts(corners: readonly PlanePoint[]): readonly (readonly PlanePoint[])[] {
  const area = signedAreaFt2(corners)
  if (Math.abs(area) < TOLERANCE_FT) return []
  const round = area > 0 ? corners : corners.toReversed()
  if (isConvex(round)) return [round]
  const indices = earcut(round.flatMap(({ xFt, yFt }) => [xFt, yFt]))
  const parts: PlanePoint[][] = []
  for (let at = 0; at < indices.length; at += 3) {
    const triangle = [0, 1, 2].map((step) => round[indices[at + step]!]!)
    const size = signedAreaFt2(triangle)
    if (Math.abs(size) < TOLERANCE_FT) continue
    parts.push(size > 0 ? triangle : triangle.toReversed())
  }
  return parts
}

function isConvex(corners: readonly PlanePoint[]): boolean {
  const count = corners.length
  return corners.every((b, index) => {
    const a = corners[(index + count - 1) % count]!
    const c = corners[(index + 1) % count]!
    return (b.xFt - a.xFt) * (c.yFt - b.yFt) - (b.yFt - a.yFt) * (c.xFt - b.xFt) >= -TOLERANCE_FT
  })
}
