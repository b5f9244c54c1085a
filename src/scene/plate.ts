import type { Direction, Point } from '../sun/index.js'
import { along, cross, from, opposite, packFaces, type Face } from './faces.js'
import type { SolidTraits } from './prism.js'
import type { Solid } from './solid.js'

/**
 * A flat convex thing of no thickness.
 *
 * @param corners In order round it, in one plane.
 */
export function plate(corners: readonly Point[], traits: SolidTraits): Solid {
  const [a, b, c] = [corners[0]!, corners[1]!, corners[2]!]
  const normal = cross(from(a, b), from(b, c))
  const middle = middleOf(corners)
  const sides = corners.map((corner, index): Face => {
    const edge = from(corner, corners[(index + 1) % corners.length]!)
    const out = cross(edge, normal)
    return { normal: along(out, from(middle, corner)) < 0 ? opposite(out) : out, through: corner }
  })
  const faces = packFaces([...sides, { normal, through: a }, { normal: opposite(normal), through: a }])
  return { ...traits, faces, corners, upright: Math.abs(normal.up) < 1e-9 * Math.hypot(normal.east, normal.north) }
}

/**
 * A box at any angle.
 *
 * @param corner One of its corners.
 * @param edges Its three edges from there, ft, at right angles to each other.
 */
export function box(corner: Point, edges: readonly [Direction, Direction, Direction], traits: SolidTraits): Solid {
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((bits): Point => {
    const take = edges.filter((_, index) => (bits & (1 << index)) !== 0)
    return {
      east: take.reduce((sum, edge) => sum + edge.east, corner.east),
      north: take.reduce((sum, edge) => sum + edge.north, corner.north),
      up: take.reduce((sum, edge) => sum + edge.up, corner.up),
    }
  })
  const faces = edges.flatMap((edge, index): Face[] => [
    { normal: opposite(edge), through: corner },
    { normal: edge, through: corners[1 << index]! },
  ])
  return { ...traits, faces: packFaces(faces), corners, upright: false }
}

export function middleOf(points: readonly Point[]): Point {
  const sum = points.reduce(
    (so, point) => ({ east: so.east + point.east, north: so.north + point.north, up: so.up + point.up }),
    { east: 0, north: 0, up: 0 },
  )
  return { east: sum.east / points.length, north: sum.north / points.length, up: sum.up / points.length }
}
