import type { Project } from '../../project/index.js'
import {
  faceCorners,
  heightAt,
  onRoof,
  outlineOf,
  planToGround,
  roofSheet,
  type Scene,
  type Sheet,
} from '../../scene/index.js'
import { own, pitchIn12Of, signedAreaFt2, type Degrees, type Point } from '../../values/index.js'

/** A surface that a line passes over: a roof plane, the level top of a building, or the faces of an array. */
export interface Surface {
  /** Path in the project file. */
  readonly path: string
  readonly kind: 'roof' | 'building' | 'modules'
  /** Figures in plan, x east and y north, ft, each with its surface. */
  readonly parts: readonly { readonly figure: readonly Point[]; readonly sheet: Sheet }[]
  /** Rise in 12; of modules that of their roof where it is less. */
  readonly pitchIn12: number
  /** Steepest of its surfaces, ft per ft. */
  readonly steepest: number
}

/** What can be judged: surfaces in space, and the paths of those whose place or height is not known. */
export interface Surfaces {
  readonly known: readonly Surface[]
  readonly unknown: readonly string[]
}

const LEVEL = { perEast: 0, perNorth: 0 }
const LEAST_AREA_FT2 = 1e-6

export function surfacesOf(project: Project, scene: Scene): Surfaces {
  const planes = Object.keys(project.roof_planes)
  const arrays = Object.keys(project.arrays).flatMap((id) => arraySurface(project, scene, id) ?? [])
  const buildings = Object.entries(project.site_plan?.buildings ?? {}).flatMap(([id, building]): Surface[] =>
    building.height_ft === undefined
      ? []
      : [
          surface(`site_plan.buildings.${id}`, 'building', 0, [
            { figure: building.corners.map(planToGround(project)), sheet: { up: building.height_ft, ...LEVEL } },
          ]),
        ],
  )
  return {
    known: [...planes.flatMap((id) => planeSurface(project, scene, id) ?? []), ...buildings, ...arrays],
    unknown: planes.filter((id) => !standsInSpace(project, scene, id)).map((id) => `roof_planes.${id}`),
  }
}

function standsInSpace(project: Project, scene: Scene, id: string): boolean {
  const plane = own(project.roof_planes, id)
  return plane !== undefined && scene.frames.get(id)?.placed === true && outlineOf(id, plane).length > 0
}

/** None of a wall, over which nothing can hang. */
function planeSurface(project: Project, scene: Scene, id: string): Surface | undefined {
  const [plane, frame] = [own(project.roof_planes, id), scene.frames.get(id)]
  if (plane === undefined || frame === undefined || !standsInSpace(project, scene, id)) return undefined
  const [outline, sheet] = [outlineOf(id, plane), roofSheet(frame)]
  if (sheet === undefined) return undefined
  const figure = outline.map((corner): Point => {
    const { east, north } = onRoof(frame, corner)
    return { xFt: east, yFt: north }
  })
  return surface(`roof_planes.${id}`, 'roof', frame.tiltDeg, [{ figure, sheet }])
}

/** The faces of all modules of an array that have places on a plane in space. */
function arraySurface(project: Project, scene: Scene, id: string): Surface | undefined {
  const frame = scene.frames.get(own(project.arrays, id)?.roof_plane ?? '')
  if (frame === undefined || !frame.placed) return undefined
  const parts = scene.faces
    .filter((face) => face.array === id)
    .map((face) => {
      const { east, north, up } = face.middle
      const { normal } = face.axes
      const perEast = -normal.east / Math.max(normal.up, 1e-6)
      const perNorth = -normal.north / Math.max(normal.up, 1e-6)
      const figure = faceCorners(face).map((corner): Point => ({ xFt: corner.east, yFt: corner.north }))
      return { figure, sheet: { perEast, perNorth, up: up - perEast * east - perNorth * north } }
    })
    .filter(({ figure }) => Math.abs(signedAreaFt2(figure)) > LEAST_AREA_FT2)
  return parts.length === 0 ? undefined : surface(`arrays.${id}`, 'modules', frame.tiltDeg, parts)
}

function surface(path: string, kind: Surface['kind'], tiltDeg: Degrees, parts: Surface['parts']): Surface {
  const steepest = Math.max(...parts.map(({ sheet }) => Math.hypot(sheet.perEast, sheet.perNorth)))
  return { path, kind, parts, steepest, pitchIn12: Math.min(12 * steepest, pitchIn12Of(tiltDeg)) }
}

export const surfaceHeightFt = (sheet: Sheet, { xFt, yFt }: Point): number => heightAt(sheet, xFt, yFt)
