import { dot, type Direction, type PlaneAxes, type Point } from '../sun/index.js'
import type { Feet } from '../values/index.js'

/** A module of another row as one module sees it, in axes of the module plane from its own middle, ft. */
export interface RowNeighbour {
  /** Along its lower edge. */
  readonly u: number
  /** Up its face. */
  readonly v: number
  /** In front of its face, above 0. */
  readonly w: number
}

/** A shadow on a module, in axes of the module plane from its middle, ft. */
export interface RowShadow {
  readonly left: number
  readonly right: number
  readonly low: number
  readonly high: number
}

const NONE: readonly RowShadow[] = []

/** Less in front of the face is rounding, ft. */
const LEAST_FT = 1e-6

/**
 * The modules that stand in front of a module's face. On a plane of parallel modules that lie in it there are none; on
 * racks there are the rows towards which the modules face.
 *
 * @param middles Middles of all modules of the array, local ft.
 */
export function rowNeighbours(middle: Point, middles: readonly Point[], modulePlane: PlaneAxes): RowNeighbour[] {
  return middles
    .map((other) => {
      const to = { east: other.east - middle.east, north: other.north - middle.north, up: other.up - middle.up }
      return { u: dot(to, modulePlane.x), v: dot(to, modulePlane.y), w: dot(to, modulePlane.normal) }
    })
    .filter(({ w }) => w > LEAST_FT)
}

/**
 * Shadows that the modules in front cast on a module. All stand parallel, so each shadow has the size of a module: the
 * neighbour itself, moved along the light into the module's plane.
 *
 * @param widthFt Along the lower edge.
 * @param heightFt Up the face.
 */
export function rowShadows(
  neighbours: readonly RowNeighbour[],
  modulePlane: PlaneAxes,
  widthFt: Feet,
  heightFt: Feet,
  towards: Direction,
): readonly RowShadow[] {
  if (neighbours.length === 0) return NONE
  const away = dot(towards, modulePlane.normal)
  if (away <= 0) return NONE
  const perAwayU = dot(towards, modulePlane.x) / away
  const perAwayV = dot(towards, modulePlane.y) / away
  const shadows: RowShadow[] = []
  for (const { u, v, w } of neighbours) {
    const across = u - perAwayU * w
    const up = v - perAwayV * w
    if (Math.abs(across) >= widthFt || Math.abs(up) >= heightFt) continue
    shadows.push({
      left: across - widthFt / 2,
      right: across + widthFt / 2,
      low: up - heightFt / 2,
      high: up + heightFt / 2,
    })
  }
  return shadows
}

/** Whether a point of the module lies in one of the shadows. */
export function isInShadow(shadows: readonly RowShadow[], u: number, v: number): boolean {
  for (const { left, right, low, high } of shadows) {
    if (u > left && u < right && v > low && v < high) return true
  }
  return false
}
