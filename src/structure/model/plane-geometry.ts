import { isOnPlane } from '../../roof/index.js'
import { radiansOf, signedAreaFt2, type Point, type Degrees, type Feet, type SquareFeet } from '../../values/index.js'

/** A point of a roof plane, ft: x along the eave to the right, y up the slope. */
export type PlanePoint = Point

export type PlaneEdgeKind = 'eave' | 'ridge' | 'rake' | 'hip' | 'valley' | 'wall'

/** What this stage needs to know about a roof plane; edges run counter-clockwise from the left end of the eave. */
export interface PlaneGeometry {
  readonly id: string
  /** Slope from level, degrees. */
  readonly tiltDeg: Degrees
  readonly edges: readonly { readonly kind: PlaneEdgeKind; readonly from: PlanePoint; readonly to: PlanePoint }[]
}

/** Whether a point lies in the plane or on its edge. */
export function isInPlane(plane: PlaneGeometry, point: PlanePoint): boolean {
  return isOnPlane(plane.edges, point)
}

/** The plane seen from above: y becomes horizontal, ft. */
export function inPlan(plane: PlaneGeometry, point: PlanePoint): PlanePoint {
  return { xFt: point.xFt, yFt: point.yFt * Math.cos(radiansOf(plane.tiltDeg)) }
}

/** Edges of a plane seen from above, for many questions about one plane. */
export interface PlanEdges {
  /** cos of the slope: what makes a distance up the slope horizontal. */
  readonly flatten: number
  readonly segments: readonly { readonly from: PlanePoint; readonly to: PlanePoint }[]
}

/** The edges of some kinds, seen from above. */
export function planEdges(plane: PlaneGeometry, kinds: readonly PlaneEdgeKind[]): PlanEdges {
  const segments = plane.edges
    .filter((edge) => kinds.includes(edge.kind))
    .map((edge) => ({ from: inPlan(plane, edge.from), to: inPlan(plane, edge.to) }))
  return { flatten: Math.cos(radiansOf(plane.tiltDeg)), segments }
}

/** Share of a squared distance within which its root is taken after all, far above what rounding can do. */
const CLOSE = 1e-9

/** Whether a point of the plane lies within a horizontal distance of one of the edges, ft. */
export function isNearEdge({ flatten, segments }: PlanEdges, xFt: number, yFt: number, reachFt: Feet): boolean {
  const y = yFt * flatten
  const reach = reachFt * reachFt
  for (const { from, to } of segments) {
    const dx = to.xFt - from.xFt
    const dy = to.yFt - from.yFt
    const squared = dx * dx + dy * dy
    const along = squared === 0 ? 0 : ((xFt - from.xFt) * dx + (y - from.yFt) * dy) / squared
    const t = along < 0 ? 0 : along > 1 ? 1 : along
    const ax = xFt - from.xFt - t * dx
    const ay = y - from.yFt - t * dy
    const distance = ax * ax + ay * ay
    if (distance > reach * (1 + CLOSE)) continue
    if (distance < reach * (1 - CLOSE) || Math.hypot(ax, ay) <= reachFt) return true
  }
  return false
}

/** Horizontal depth of the plane from its lowest to its highest point, ft. */
export function planDepthFt(plane: PlaneGeometry): Feet {
  const heights = plane.edges.map((edge) => edge.from.yFt)
  return (Math.max(...heights) - Math.min(...heights)) * Math.cos(radiansOf(plane.tiltDeg))
}

/** Area of the plane along the surface, ft2. */
export function planeAreaFt2(plane: PlaneGeometry): SquareFeet {
  return Math.abs(signedAreaFt2(cornersOf(plane)))
}

const cornersOf = (plane: PlaneGeometry): Point[] => plane.edges.map((edge) => edge.from)
