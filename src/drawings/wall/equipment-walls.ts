import type { PlanEquipment, SitePlan } from '../../project/index.js'
import { distanceToSegmentFt, own, segmentsOf, signedAreaFt2, type Feet, type Point } from '../../values/index.js'
import { EQUIPMENT } from '../sheets/site-figures.js'

/** A piece of equipment on a wall. */
export interface WallPiece {
  readonly id: string
  readonly name: string
  /** From the left end of the wall, seen from outside, ft. */
  readonly alongFt: Feet
  readonly stated: PlanEquipment
}

/** A wall of a building seen from outside. */
export interface EquipmentWall {
  /** Name of the building. */
  readonly building: string
  readonly lengthFt: Feet
  /** From left to right. */
  readonly pieces: readonly WallPiece[]
}

/** Equipment that stands no farther from a wall hangs on it, ft. */
const ON_WALL_FT = 2

interface Edge {
  readonly building: string
  readonly from: Point
  readonly to: Point
}

/** What a piece is called on drawings. */
export const pieceName = ({ name, kind }: PlanEquipment): string => name ?? EQUIPMENT[kind][1]

/** Walls of the site plan that carry equipment, each piece on the nearest wall; free-standing ones are left out. */
export function equipmentWalls(plan: SitePlan | undefined): EquipmentWall[] {
  const edges = Object.entries(plan?.buildings ?? {}).flatMap(([id, { name, corners }]) =>
    edgesOf(
      name ?? id,
      corners.map(({ x_ft: xFt, y_ft: yFt }) => ({ xFt, yFt })),
    ),
  )
  const walls = new Map<Edge, WallPiece[]>()
  for (const [id, stated] of Object.entries(plan?.equipment ?? {})) {
    const at = { xFt: stated.x_ft, yFt: stated.y_ft }
    const [nearest] = edges
      .map((edge) => ({ edge, distance: distanceToSegmentFt(at, [edge.from, edge.to]) }))
      .filter(({ distance }) => distance <= ON_WALL_FT)
      .toSorted((a, b) => a.distance - b.distance)
    if (nearest === undefined) continue
    const piece = { id, name: pieceName(stated), alongFt: along(nearest.edge, at), stated }
    walls.set(nearest.edge, [...(walls.get(nearest.edge) ?? []), piece])
  }
  return [...walls].map(([edge, pieces]) => ({
    building: edge.building,
    lengthFt: Math.hypot(edge.to.xFt - edge.from.xFt, edge.to.yFt - edge.from.yFt),
    pieces: pieces.toSorted((a, b) => a.alongFt - b.alongFt),
  }))
}

/** Walls of a building, each from its left end to its right end as somebody outside sees it. */
function edgesOf(building: string, corners: readonly Point[]): Edge[] {
  // Counter-clockwise, the inside is on the left of each wall, so that its beginning is on the left from outside.
  const turned = signedAreaFt2(corners) > 0 ? corners : corners.toReversed()
  return segmentsOf(turned).map(([from, to]) => ({ building, from, to }))
}

function along({ from, to }: Edge, at: Point): Feet {
  const [dx, dy] = [to.xFt - from.xFt, to.yFt - from.yFt]
  return ((at.xFt - from.xFt) * dx + (at.yFt - from.yFt) * dy) / Math.hypot(dx, dy)
}

/** Sizes of a piece that stands on the elevation; undefined while one of them is not stated. */
export function outlineOf({ bottom_in: bottomIn, width_in: widthIn, height_in: heightIn }: PlanEquipment) {
  return bottomIn === undefined || widthIn === undefined || heightIn === undefined
    ? undefined
    : { bottomIn, widthIn, heightIn }
}

/** A piece by its key under site_plan.equipment. */
export const pieceOf = (plan: SitePlan | undefined, id: string): PlanEquipment | undefined => own(plan?.equipment, id)
