import { tiltDegOf } from '../project/facts.js'
import type { Project } from '../project/index.js'
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
export function isOnRacks(project: Project, arrayId: string): boolean {
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
  project: Project,
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

/** A module on a rack, which shades others. */
export function modulePlate(face: ModuleFace): Solid {
  return plate(faceCorners(face), {
    path: `arrays.${face.array}`,
    transmittance: undefined,
    arrays: undefined,
    moduleId: face.id,
  })
}
