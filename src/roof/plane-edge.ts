import type { Feet, Point } from '../values/index.js'

export type EdgeKind = 'eave' | 'ridge' | 'rake' | 'hip' | 'valley' | 'wall'

/** One edge of a plane; the plane lies on its left when one walks from `from` to `to`. */
export interface PlaneEdge {
  readonly kind: EdgeKind
  readonly from: Point
  readonly to: Point
  readonly lengthFt: Feet
}

/** A corner, and the kind of the edge from it to the next corner when it is known. */
export interface OutlineCornerFt extends Point {
  readonly edge?: EdgeKind | undefined
}
