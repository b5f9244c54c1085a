import type { Project } from '../project/index.js'
import type { Finding } from '../worksheet/index.js'
import { boxCorners, containsPoint, distanceBetweenFt } from '../values/index.js'
import type { Point } from '../sun/index.js'
import type { Scene, World } from './build-scene.js'
import { faceCorners } from './module-faces.js'
import { middleOf } from './plate.js'
import { planePoints } from './plane-points.js'
import { outlineOf } from './roof-solids.js'
import { depthFt, type Solid } from './solid.js'

/** A module that reaches less than this into something touches it, ft. */
const TOUCH_FT = 0.05
/** Corners on a common face may differ by this, ft. */
const ROUNDING_FT = 1e-6
/** Share of a plane inside things that are no roof from which it is told. */
const PIERCED = 0.02
/** Share of a plane inside another roof from which they do not just meet in a valley. */
const COVERED = 0.6

/** Modules that lie inside of something. */
export function modulesInside({ faces, worlds }: Scene): Finding[] {
  const found = new Map<string, Finding>()
  for (const face of faces) {
    const things = `roof_planes.${face.planeId}.obstructions.`
    const points = [face.middle, ...faceCorners(face)]
    for (const solid of worlds.get(face.planeId)?.solids ?? []) {
      if (solid.bodyOf === face.planeId || solid.isRack === true || solid.path.startsWith(things)) continue
      const deepest = Math.max(...points.map((point) => depthFt(solid, point)))
      const key = `${face.array} ${solid.path}`
      if (deepest < TOUCH_FT || found.has(key)) continue
      found.set(key, {
        severity: 'error',
        id: 'scene.module-inside',
        message: `module ${face.id} lies inside ${solid.path}, by up to ${deepest.toFixed(1)} ft`,
        where: `arrays.${face.array}`,
        fix: `Correct the place or the height of ${solid.path} or of roof_planes.${face.planeId}, or move the modules.`,
      })
    }
  }
  return [...found.values()]
}

/** Roof planes that lie inside of something, wholly or in part. */
export function planesInside(project: Project, { frames, worlds }: Scene): Finding[] {
  return [...frames.values()].flatMap((frame): Finding[] => {
    const world = worlds.get(frame.planeId)
    if (!frame.placed || world === undefined) return []
    const points = planePoints(project, frame)
    if (points.length === 0) return []
    return pathsOf(world).flatMap((path): Finding[] => {
      const solids = world.solids.filter((solid) => solid.path === path && isStanding(solid, frame.planeId))
      const inside = points.filter((point) => solids.some((solid) => depthFt(solid, point) > TOUCH_FT)).length
      const share = inside / points.length
      const isRoof = solids[0]?.bodyOf !== undefined
      if (share <= (isRoof ? COVERED : PIERCED)) return []
      return [
        {
          severity: 'warning',
          id: 'scene.plane-inside',
          message: `${(100 * share).toFixed(0)} % of roof plane ${frame.planeId} lies inside ${path}`,
          where: `roof_planes.${frame.planeId}`,
          fix: `Correct the place, the height or the outline of roof_planes.${frame.planeId} or of ${path}.`,
        },
      ]
    })
  })
}

function isStanding(solid: Solid, planeId: string): boolean {
  const isOwn = solid.bodyOf === planeId || solid.path.startsWith(`roof_planes.${planeId}.`)
  return !isOwn && solid.isRack !== true && solid.transmittance === undefined
}

function pathsOf({ solids }: World): string[] {
  return [...new Set(solids.map(({ path }) => path))]
}

/** Things of which nothing can be seen. */
export function hiddenThings({ worlds }: Scene): Finding[] {
  return [...new Set(worlds.values())].flatMap((world) =>
    pathsOf(world).flatMap((path): Finding[] => {
      const parts = world.solids.filter((solid) => solid.path === path)
      if (parts.some((part) => part.isRack === true || part.bodyOf !== undefined)) return []
      const others = world.solids.filter((other) => other.path !== path && other.isRack !== true)
      const around = (point: Point): Solid | undefined => others.find((other) => depthFt(other, point) > -ROUNDING_FT)
      const points = parts.flatMap(({ corners }) => [...corners, middleOf(corners)])
      const round = points.every((point) => around(point) !== undefined) ? around(points[0]!) : undefined
      if (round === undefined) return []
      return [
        {
          severity: 'warning',
          id: 'scene.buried',
          message: `${path} stands wholly inside other things (${round.path}) and shows nowhere`,
          where: path,
          fix: 'Correct its place or its height, or leave it out.',
        },
      ]
    }),
  )
}

/** Things on a roof that stand wholly beyond its edges. */
export function floatingThings(project: Project): Finding[] {
  return Object.entries(project.roof_planes).flatMap(([planeId, plane]) => {
    const outline = outlineOf(planeId, plane)
    if (outline.length === 0) return []
    return Object.entries(plane.obstructions ?? {}).flatMap(([id, thing]): Finding[] => {
      const foot = boxCorners({
        xFt: thing.x_ft,
        yFt: thing.y_ft,
        widthFt: thing.width_ft,
        heightFt: thing.length_ft,
      })
      const middle = { xFt: thing.x_ft + thing.width_ft / 2, yFt: thing.y_ft + thing.length_ft / 2 }
      const meets =
        [...foot, middle].some((point) => containsPoint(outline, point)) ||
        outline.some((corner) => containsPoint(foot, corner)) ||
        distanceBetweenFt(foot, outline) < TOUCH_FT
      if (meets) return []
      return [
        {
          severity: 'warning',
          id: 'scene.floats',
          message: `${id} lies wholly beyond the edges of roof plane ${planeId}: it stands on nothing`,
          where: `roof_planes.${planeId}.obstructions.${id}`,
          fix: 'Correct x_ft and y_ft; a thing beside the roof belongs under site.obstacles.',
        },
      ]
    })
  })
}
