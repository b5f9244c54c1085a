import type { LoadEdition } from '../../tables/asce7/index.js'
import { isNearEdge, planEdges, type PlaneGeometry, type PlanePoint } from '../model/index.js'
import type { Degrees, Feet } from '../../values/index.js'

/** Zone names of an edition, from the mildest to the worst, for reporting. */
export function zoneNames(edition: LoadEdition, roofKind: 'gable' | 'hip'): readonly string[] {
  if (edition !== 'ASCE 7-16') return ['1', '2', '3']
  return roofKind === 'gable' ? ['1', '2e', '2n', '2r', '3e', '3r'] : ['1', '2e', '2r', '3']
}

/**
 * Wind zone of a point on a roof plane.
 *
 * @param plane Edges with their kinds, and the slope.
 * @param point Plane coordinates, ft.
 * @param stripFt Width `a` of the edge strips, ft in plan.
 * @source ASCE 7-10 figure 30.4-2, ASCE 7-16 and 7-22 figure 30.3-2 (secondary). On the safe side: corners of 7-10 hip
 * roofs stay zone 3 at any slope, all eaves of 7-22 hip roofs are zone 3, eave corners of 7-22 gable roofs over 27 degrees
 * are zone 3, and an edge against a wall counts as a rake.
 * @limits Slopes over 7, up to 45 degrees. Not for roof overhangs.
 */
export function zoneAt(plane: PlaneGeometry, point: PlanePoint, stripFt: Feet, shape: ZoneShape): string {
  return zoneFinder(plane, stripFt, shape)(point.xFt, point.yFt)
}

/** What decides which figure names the zones. */
export interface ZoneShape {
  readonly edition: LoadEdition
  readonly roofKind: 'gable' | 'hip'
}

/** `zoneAt` for many points of one plane. */
export function zoneFinder(
  plane: PlaneGeometry,
  stripFt: Feet,
  shape: ZoneShape,
): (xFt: number, yFt: number) => string {
  const eaves = planEdges(plane, ['eave'])
  const ends = planEdges(plane, ['rake', 'wall'])
  const ridges = planEdges(plane, ['ridge'])
  const hips = planEdges(plane, ['hip'])
  const reachFt = stripFt + 1e-9
  return (xFt, yFt) =>
    zoneOf(plane.tiltDeg, shape, {
      eave: isNearEdge(eaves, xFt, yFt, reachFt),
      end: isNearEdge(ends, xFt, yFt, reachFt),
      ridge: isNearEdge(ridges, xFt, yFt, reachFt),
      hip: isNearEdge(hips, xFt, yFt, reachFt),
    })
}

/** The kinds of edge that a point is near to. */
interface NearEdges {
  readonly eave: boolean
  /** A rake, or an edge against a wall. */
  readonly end: boolean
  readonly ridge: boolean
  readonly hip: boolean
}

function zoneOf(tiltDeg: Degrees, shape: ZoneShape, { eave, end, ridge, hip }: NearEdges): string {
  if (shape.edition === 'ASCE 7-16') {
    return shape.roofKind === 'gable' ? gableZone7of16(eave, end, ridge || hip) : hipZone7of16(eave, end, ridge || hip)
  }
  if (shape.edition === 'ASCE 7-10') {
    if ((eave && (end || hip)) || (ridge && end)) return '3'
    return eave || end || ridge || hip ? '2' : '1'
  }
  if (shape.roofKind === 'hip') return eave ? '3' : ridge || hip || end ? '2' : '1'
  if ((ridge || hip) && end) return '3'
  if (tiltDeg > 27 && eave && end) return '3'
  return end || ridge || hip ? '2' : '1'
}

function gableZone7of16(eave: boolean, end: boolean, ridge: boolean): string {
  if (end) return ridge ? '3r' : eave ? '3e' : '2n'
  return ridge ? '2r' : eave ? '2e' : '1'
}

function hipZone7of16(eave: boolean, end: boolean, ridge: boolean): string {
  if (eave) return ridge || end ? '3' : '2e'
  return ridge || end ? '2r' : '1'
}
