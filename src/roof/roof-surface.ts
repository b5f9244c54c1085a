import { tiltDegOf } from '../project/facts.js'
import type { RoofPlane } from '../project/index.js'
import type { Worksheet } from '../worksheet/index.js'
import type { PlaneEdge } from './plane-edge.js'
import { outlineEdges } from './plane-outline.js'
import { radiansOf, signedAreaFt2, type Degrees, type Point, type SquareFeet } from '../values/index.js'

/** A roof plane with its outline worked out. */
export interface RoofSurface {
  readonly id: string
  /** Direction that it faces, degrees clockwise from true north. */
  readonly azimuthDeg: Degrees
  /** Slope from level, degrees. */
  readonly tiltDeg: Degrees
  /** Counter-clockwise from the left end of the eave, ft in plane coordinates. */
  readonly corners: readonly Point[]
  /** `edges[i]` runs from `corners[i]` to the next corner. */
  readonly edges: readonly PlaneEdge[]
  /** Along the surface, square ft. */
  readonly areaFt2: SquareFeet
  /** Seen from above, square ft. */
  readonly planAreaFt2: SquareFeet
}

/**
 * Works out a roof plane, or undefined when the project does not state its outline.
 *
 * @throws StageError when the slope is missing or stated twice, or the outline is impossible.
 */
export function roofSurface(id: string, plane: RoofPlane, worksheet: Worksheet): RoofSurface | undefined {
  if (plane.outline === undefined) return undefined
  const tiltDeg = tiltDegOf(plane, `roof_planes.${id}`)
  const edges = outlineEdges(plane.outline, `roof_planes.${id}.outline`, worksheet)
  const corners = edges.map((edge) => ({ xFt: edge.from.xFt, yFt: edge.from.yFt }))
  const areaFt2 = signedAreaFt2(corners)
  const planAreaFt2 = areaFt2 * Math.cos(radiansOf(tiltDeg))
  return { id, azimuthDeg: plane.azimuth_deg, tiltDeg, corners, edges, areaFt2, planAreaFt2 }
}
