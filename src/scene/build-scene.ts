import type { SpaceProject } from '../project/index.js'
import type { ModulePlacement } from '../roof/index.js'
import type { Point } from '../sun/index.js'
import { moduleFaces, rackPlates, type ModuleFace } from './module-faces.js'
import { placedObstacles, seenObstacles } from './obstacle-solids.js'
import { middleOf } from './plate.js'
import { onRoof, roofFrame, type RoofFrame } from './roof-frame.js'
import { endlessRoof, outlineOf, roofBody, roofThings } from './roof-solids.js'
import type { Solid } from './solid.js'

/** Things that see each other, in one system of coordinates. */
export interface World {
  /** Roof planes that stand in it. */
  readonly planes: readonly string[]
  readonly solids: readonly Solid[]
}

/** The house in space. */
export interface Scene {
  /** Every roof plane in its world. */
  readonly frames: ReadonlyMap<string, RoofFrame>
  /** The world of each roof plane: one for all that stand in space, one of its own for each other. */
  readonly worlds: ReadonlyMap<string, World>
  /** Faces of the modules that have places. */
  readonly faces: readonly ModuleFace[]
}

/** What of a scene is wished otherwise. */
export interface SceneWishes {
  /** Array whose modules are only turned in thought, so that its rows do not shade anything. */
  readonly turned?: string
}

/**
 * The house in space: roof planes with the walls below, what stands on them, trees and buildings, and modules on racks.
 *
 * @param placements Places of the modules, as the arrangement has them.
 * @throws StageError when an outline or a slope is impossible.
 */
export function buildScene(
  project: SpaceProject,
  placements: readonly ModulePlacement[],
  { turned }: SceneWishes = {},
): Scene {
  const frames = new Map(
    Object.entries(project.roof_planes).map(([id, plane]) => [id, roofFrame(project, id, plane)] as const),
  )
  const faces = moduleFaces(project, placements, frames)
  const together = [...frames.values()].filter((frame) => frame.placed).map((frame) => frame.planeId)
  const alone = [...frames.keys()].filter((id) => !together.includes(id))
  const worlds = new Map<string, World>()
  const racks = faces.filter((face) => face.onRack && face.array !== turned)
  const add = (planes: readonly string[], solids: readonly Solid[]): void => {
    const here = rackPlates(racks.filter((face) => planes.includes(face.planeId)))
    const seen = seenObstacles(project, (arrays) => middleOfArrays(project, { planes, arrays }, faces, frames))
    const things = planes.flatMap((id) => thingsOn(project, frames, id))
    const world = { planes, solids: [...solids, ...things, ...seen, ...here] }
    for (const id of planes) worlds.set(id, world)
  }
  if (together.length > 0) {
    const bodies = together.flatMap((id) => {
      const [frame, plane] = [frames.get(id), project.roof_planes[id]]
      return frame === undefined || plane === undefined ? [] : roofBody(frame, plane)
    })
    add(together, [...bodies, ...placedObstacles(project)])
  }
  for (const id of alone) {
    const frame = frames.get(id)
    const hasRacks = racks.some((face) => face.planeId === id)
    add([id], frame !== undefined && hasRacks ? [endlessRoof(frame)] : [])
  }
  return { frames, worlds, faces }
}

function thingsOn(project: SpaceProject, frames: ReadonlyMap<string, RoofFrame>, id: string): Solid[] {
  const [frame, plane] = [frames.get(id), project.roof_planes[id]]
  return frame === undefined || plane === undefined ? [] : roofThings(frame, plane)
}

/**
 * Middle of the modules of some arrays on some planes; of an array without places the middle of its plane. Undefined
 * where none of the arrays is on these planes.
 */
function middleOfArrays(
  project: SpaceProject,
  { planes, arrays }: { readonly planes: readonly string[]; readonly arrays: readonly string[] | undefined },
  faces: readonly ModuleFace[],
  frames: ReadonlyMap<string, RoofFrame>,
): Point | undefined {
  const points = Object.entries(project.arrays)
    .filter(([id, array]) => planes.includes(array.roof_plane) && (arrays === undefined || arrays.includes(id)))
    .flatMap(([id, array]): Point[] => {
      const own = faces.filter((face) => face.array === id).map((face) => face.middle)
      const frame = frames.get(array.roof_plane)
      if (own.length > 0 || frame === undefined) return own
      return [standIn(project, frame)]
    })
  return points.length === 0 ? undefined : middleOf(points)
}

/** Where an array without places is taken to lie: the middle of its plane's outline, or its eave where none is stated. */
export function standIn(project: SpaceProject, frame: RoofFrame): Point {
  const plane = project.roof_planes[frame.planeId]
  const outline = plane === undefined ? [] : outlineOf(frame.planeId, plane)
  return outline.length === 0 ? frame.origin : middleOf(outline.map((corner) => onRoof(frame, corner)))
}
