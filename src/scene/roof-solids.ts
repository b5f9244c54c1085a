import type { Obstruction, RoofPlane } from '../project/index.js'
import { roofSurface } from '../roof/index.js'
import type { Direction } from '../sun/index.js'
import { boxCorners, type Point as PlanePoint } from '../values/index.js'
import { Worksheet } from '../worksheet/index.js'
import { convexParts } from './convex-parts.js'
import { moved, packFaces } from './faces.js'
import { box, plate } from './plate.js'
import { level, prisms, raised } from './prism.js'
import { onRoof, roofSheet, type RoofFrame } from './roof-frame.js'
import type { Solid } from './solid.js'

/** On a steeper plane things stand at right angles to it, as on a wall, degrees. */
const WALL_DEG = 60
/** Far enough for an endless plane, ft. */
const FAR_FT = 100_000

/** Corners of a roof plane in its own coordinates, ft; none where the project states no outline. */
export function outlineOf(planeId: string, plane: RoofPlane): readonly PlanePoint[] {
  return roofSurface(planeId, plane, new Worksheet())?.corners ?? []
}

/** What stands below a placed roof plane, down to the ground; for a wall, the wall. */
export function roofBody(frame: RoofFrame, plane: RoofPlane): Solid[] {
  const outline = outlineOf(frame.planeId, plane)
  if (outline.length === 0) return []
  const path = `roof_planes.${frame.planeId}`
  const traits = { path, transmittance: undefined, arrays: undefined, bodyOf: frame.planeId }
  const top = roofSheet(frame)
  if (top === undefined) {
    const figures = [...convexParts(outline), wallBelow(frame, outline)]
    return figures.map((figure) =>
      plate(
        figure.map((corner) => onRoof(frame, corner)),
        traits,
      ),
    )
  }
  const figure = outline.map((corner): PlanePoint => {
    const { east, north } = onRoof(frame, corner)
    return { xFt: east, yFt: north }
  })
  return prisms(figure, level(0), top, traits)
}

/** What of an upright plane stands below its own outline, down to the ground. */
function wallBelow({ origin }: RoofFrame, outline: readonly PlanePoint[]): PlanePoint[] {
  const [xs, ys] = [outline.map(({ xFt }) => xFt), outline.map(({ yFt }) => yFt)]
  const [left, low] = [Math.min(...xs), Math.min(...ys)]
  return boxCorners({ xFt: left, yFt: -origin.up, widthFt: Math.max(...xs) - left, heightFt: low + origin.up })
}

/** A plane that stands in no space, as modules on racks over it look at it: without end. */
export function endlessRoof(frame: RoofFrame): Solid {
  const { x, y, normal } = frame.axes
  const corners = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([along, up]) => moved(moved(frame.origin, x, along! * FAR_FT), y, up! * FAR_FT))
  return {
    path: `roof_planes.${frame.planeId}`,
    faces: packFaces([{ normal, through: frame.origin }]),
    corners,
    upright: false,
    transmittance: undefined,
    arrays: undefined,
    bodyOf: frame.planeId,
  }
}

/** Chimneys, vents, dormers and other things on a plane: sides plumb, tops level or with the roof. */
export function roofThings(frame: RoofFrame, plane: RoofPlane): Solid[] {
  return Object.entries(plane.obstructions ?? {})
    .filter(([, thing]) => thing.height_ft > 0)
    .flatMap(([id, thing]) => roofThing(frame, `roof_planes.${frame.planeId}.obstructions.${id}`, thing))
}

function roofThing(frame: RoofFrame, path: string, thing: Obstruction): Solid[] {
  const traits = { path, transmittance: undefined, arrays: undefined }
  const footprint = boxCorners({
    xFt: thing.x_ft,
    yFt: thing.y_ft,
    widthFt: thing.width_ft,
    heightFt: thing.length_ft,
  })
  const surface = roofSheet(frame)
  if (surface === undefined || frame.tiltDeg > WALL_DEG) {
    const { x, y, normal } = frame.axes
    const edges = [times(x, thing.width_ft), times(y, thing.length_ft), times(normal, thing.height_ft)] as const
    return [box(onRoof(frame, footprint[0]!), edges, traits)]
  }
  const figure = footprint.map((corner): PlanePoint => {
    const { east, north } = onRoof(frame, corner)
    return { xFt: east, yFt: north }
  })
  const upperEdge = onRoof(frame, { xFt: thing.x_ft, yFt: thing.y_ft + thing.length_ft })
  const top = runsWithRoof(thing) ? raised(surface, thing.height_ft) : level(upperEdge.up + thing.height_ft)
  return prisms(figure, surface, top, traits)
}

/** Skylights and dormers have tops that run with the roof. */
function runsWithRoof({ kind }: Obstruction): boolean {
  return kind === 'skylight' || kind === 'dormer'
}

const times = ({ east, north, up }: Direction, by: number): Direction => ({
  east: east * by,
  north: north * by,
  up: up * by,
})
