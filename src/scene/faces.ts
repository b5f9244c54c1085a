import type { Direction, Point } from '../sun/index.js'

/** A face through a point; the normal need not have length 1. */
export interface Face {
  readonly normal: Direction
  readonly through: Point
}

/** Faces as a solid keeps them. */
export function packFaces(faces: readonly Face[]): Float64Array {
  const packed = new Float64Array(faces.length * 4)
  faces.forEach(({ normal, through }, index) => {
    const length = Math.hypot(normal.east, normal.north, normal.up)
    const unit = { east: normal.east / length, north: normal.north / length, up: normal.up / length }
    packed.set([unit.east, unit.north, unit.up, along(unit, through)], index * 4)
  })
  return packed
}

export function along(direction: Direction, point: Point): number {
  return direction.east * point.east + direction.north * point.north + direction.up * point.up
}

export function cross(a: Direction, b: Direction): Direction {
  return {
    east: a.north * b.up - a.up * b.north,
    north: a.up * b.east - a.east * b.up,
    up: a.east * b.north - a.north * b.east,
  }
}

export function from(a: Point, b: Point): Direction {
  return { east: b.east - a.east, north: b.north - a.north, up: b.up - a.up }
}

/** A point moved along a direction. */
export function moved(point: Point, direction: Direction, by: number): Point {
  return {
    east: point.east + direction.east * by,
    north: point.north + direction.north * by,
    up: point.up + direction.up * by,
  }
}

export const opposite = ({ east, north, up }: Direction): Direction => ({ east: -east, north: -north, up: -up })
