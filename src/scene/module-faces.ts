import { tiltDegOf } from '../project/facts.js'
import type { SpaceProject } from '../project/index.js'
import type { ModulePlacement } from '../roof/index.js'
import { dot, planeAxes, type PlaneAxes, type Point } from '../sun/index.js'
import { feetOf, own, type Feet } from '../values/index.js'
import { moved } from './faces.js'
import { plate } from './plate.js'
import { onRoof, type RoofFrame } from './roof-frame.js'
import type { Solid } from './solid.js'

/** A module that differs less from its plane lies on it, degrees. */
const LEAST_RACK_DEG = 0.5

/** The face of a module in space. */
export interface ModuleFace {
  readonly id: string
  readonly array: string
  readonly planeId: string
  readonly middle: Point
  /** Along its lower edge, up its face, and away from it. */
  readonly axes: PlaneAxes
  /** Along the lower edge, ft. */
  readonly widthFt: Feet
  /** Up the face, ft. */
  readonly heightFt: Feet
  readonly onRack: boolean
}

/** Whether racks turn the modules of an array out of the plane of their roof. */
export function isOnRacks(project: SpaceProject, arrayId: string): boolean {
  const array = own(project.arrays, arrayId)
  const plane = array === undefined ? undefined : own(project.roof_planes, array.roof_plane)
  if (array === undefined || plane === undefined) return false
  const roofTiltDeg = tiltDegOf(plane)
  const tiltDeg = array.module_tilt_deg ?? roofTiltDeg
  const azimuthDeg = array.module_azimuth_deg ?? plane.azimuth_deg
  return Math.abs(tiltDeg - roofTiltDeg) > LEAST_RACK_DEG || azimuthDeg !== plane.azimuth_deg
}

/** The faces of the modules that have places, standing in the frames of their planes. */
export function moduleFaces(
  project: SpaceProject,
  placements: readonly ModulePlacement[],
  frames: ReadonlyMap<string, RoofFrame>,
): ModuleFace[] {
  return placements.flatMap((placement): ModuleFace[] => {
    const array = own(project.arrays, placement.array)
    const frame = frames.get(placement.roofPlane)
    if (array === undefined || frame === undefined) return []
    const module = own(project.equipment.modules, array.module)
    const tiltDeg = array.module_tilt_deg ?? frame.tiltDeg
    const azimuthDeg = array.module_azimuth_deg ?? frame.azimuthDeg
    const middle = {
      xFt: placement.xFt + placement.widthFt / 2,
      yFt: placement.yFt + placement.heightFt / 2,
    }
    const axes = planeAxes(tiltDeg, azimuthDeg)
    // The clear height of a module on a rack is that of its lowest corner.
    const { normal } = frame.axes
    const reachFt =
      (placement.widthFt * Math.abs(dot(normal, axes.x)) + placement.heightFt * Math.abs(dot(normal, axes.y))) / 2
    const heightFt = feetOf(array.standoff_in + (module?.thickness_in ?? 0)) + reachFt
    return [
      {
        id: placement.id,
        array: placement.array,
        planeId: placement.roofPlane,
        middle: onRoof(frame, middle, heightFt),
        axes,
        widthFt: placement.widthFt,
        heightFt: placement.heightFt,
        onRack: isOnRacks(project, placement.array),
      },
    ]
  })
}

/** Corners of a face, from the lower left one round it. */
export function faceCorners({ middle, axes, widthFt, heightFt }: ModuleFace): Point[] {
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([across, up]) => moved(moved(middle, axes.x, (across! * widthFt) / 2), axes.y, (up! * heightFt) / 2))
}

/** Modules of a row that lie nearer than this to each other throw one shadow, ft: light through a gap of an inch is nothing. */
const ONE_SHADOW_FT = 2 / 12
/** Modules whose lower edges are in line belong to a row, ft. */
const IN_LINE_FT = 1e-7

/** Modules on racks, which shade others: those that lie side by side are one plate. */
export function rackPlates(faces: readonly ModuleFace[]): Solid[] {
  const rows: { readonly first: ModuleFace; readonly members: ModuleFace[] }[] = []
  for (const face of faces.toSorted((a, b) => along(a, a) - along(b, b))) {
    const row = rows.find(({ first, members }) => continues(first, members.at(-1) ?? first, face))
    if (row === undefined) rows.push({ first: face, members: [face] })
    else row.members.push(face)
  }
  return rows.map(({ first, members }) => rowPlate(first, members.at(-1) ?? first))
}

/** Place along the lower edge of a face. */
function along({ axes }: ModuleFace, { middle }: ModuleFace): number {
  return dot(axes.x, middle)
}

function continues(first: ModuleFace, before: ModuleFace, face: ModuleFace): boolean {
  const { axes } = first
  const isAlike = first.array === face.array && first.heightFt === face.heightFt
  const isInLine =
    Math.abs(dot(axes.y, face.middle) - dot(axes.y, first.middle)) < IN_LINE_FT &&
    Math.abs(dot(axes.normal, face.middle) - dot(axes.normal, first.middle)) < IN_LINE_FT
  const gapFt = along(first, face) - along(first, before) - (face.widthFt + before.widthFt) / 2
  return isAlike && isInLine && gapFt < ONE_SHADOW_FT
}

function rowPlate(first: ModuleFace, last: ModuleFace): Solid {
  const [lowerLeft, , , upperLeft] = faceCorners(first)
  const [, lowerRight, upperRight] = faceCorners(last)
  return plate([lowerLeft!, lowerRight!, upperRight!, upperLeft!], {
    path: `arrays.${first.array}`,
    transmittance: undefined,
    arrays: undefined,
    isRack: true,
  })
}
