import type { Project } from '../project/index.js'
import type { Finding } from '../worksheet/index.js'
import { containsPoint, distanceBetweenFt, own, type Point as PlanePoint } from '../values/index.js'
import type { Scene } from './build-scene.js'
import { planToGround } from './plan-axes.js'
import { planePoints } from './plane-points.js'
import { onRoof } from './roof-frame.js'
import { outlineOf } from './roof-solids.js'

/** Overhang of a roof beyond the walls that the site plan draws, ft. */
const OVERHANG_FT = 4

/** Planes with modules that do not stand in space know nothing of the others. */
export function planesApart(project: Project, { frames }: Scene): Finding[] {
  const used = [...new Set(Object.values(project.arrays).map((array) => array.roof_plane))]
  const alone = used.filter((id) => frames.get(id)?.placed === false)
  const placedThings =
    Object.values(project.site.obstacles ?? {}).some(({ at, corners }) => at !== undefined || corners !== undefined) ||
    Object.values(project.site_plan?.buildings ?? {}).some((building) => building.height_ft !== undefined)
  if (alone.length === 0 || (frames.size < 2 && !placedThings)) return []
  return alone.map((id): Finding => {
    const plane = own(project.roof_planes, id)
    const place = own(project.site_plan?.roof_planes, id) ?? plane?.eave_left
    const lacks = [
      ...(place === undefined ? ['eave_left'] : []),
      ...(plane?.eave_height_ft === undefined ? ['eave_height_ft'] : []),
    ]
    return {
      severity: placedThings ? 'warning' : 'note',
      id: 'scene.plane-not-in-space',
      message: `roof plane ${id} does not stand in space (${lacks.join(' and ')} missing): shade that other roof planes, their walls and things at a place of the plan throw on it is not counted`,
      where: `roof_planes.${id}`,
      fix: `State ${lacks.map((key) => `roof_planes.${id}.${key}`).join(' and ')}; the site plan can give the place too.`,
    }
  })
}

/** A site plan that does not say where north is. */
export function withoutNorth(project: Project, { frames }: Scene): Finding[] {
  const plan = project.site_plan
  const isPlaced = [...frames.values()].some((frame) => frame.placed)
  if (plan === undefined || plan.up_azimuth_deg !== undefined || !isPlaced) return []
  return [
    {
      severity: 'warning',
      id: 'scene.north-assumed',
      message:
        'the site plan does not say which way is north, and roof planes stand in it: up on the drawing is taken as true north, so that planes, trees and buildings may shade each other from wrong sides',
      where: 'site_plan.up_azimuth_deg',
      fix: 'State up_azimuth_deg, the true direction that is up on the drawing; 0 when north is up.',
    },
  ]
}

/** Roof planes that lie elsewhere than the buildings of the site plan, as with a wrong north. */
export function besideBuildings(project: Project, { frames }: Scene): Finding[] {
  const toGround = planToGround(project)
  const buildings = Object.values(project.site_plan?.buildings ?? {}).map(({ corners }) => corners.map(toGround))
  if (buildings.length === 0) return []
  return [...frames.values()].flatMap((frame): Finding[] => {
    const plane = own(project.roof_planes, frame.planeId)
    if (!frame.placed || plane === undefined) return []
    const corners = outlineOf(frame.planeId, plane).map((corner): PlanePoint => {
      const { east, north } = onRoof(frame, corner)
      return { xFt: east, yFt: north }
    })
    const farthest = Math.max(
      0,
      ...corners.map((corner) => Math.min(...buildings.map((each) => beyondFt(each, corner)))),
    )
    if (farthest <= OVERHANG_FT) return []
    return [
      {
        severity: 'warning',
        id: 'scene.plane-off-building',
        message: `roof plane ${frame.planeId} reaches ${farthest.toFixed(0)} ft beyond every building of the site plan`,
        where: `roof_planes.${frame.planeId}`,
        fix: 'Check eave_left (the left end as seen from outside, facing the slope), azimuth_deg and site_plan.up_azimuth_deg.',
      },
    ]
  })
}

function beyondFt(building: readonly PlanePoint[], point: PlanePoint): number {
  return containsPoint(building, point) ? 0 : distanceBetweenFt([point], building)
}

/** Buildings that are drawn, but neither have a height nor a roof plane over them. */
export function lowBuildings(project: Project, { frames }: Scene): Finding[] {
  const placed = [...frames.values()].filter((frame) => frame.placed)
  if (placed.length === 0) return []
  const toGround = planToGround(project)
  const middles = placed
    .flatMap((frame) => planePoints(project, frame))
    .map(({ east, north }) => ({ xFt: east, yFt: north }))
  return Object.entries(project.site_plan?.buildings ?? {}).flatMap(([id, building]): Finding[] => {
    const corners = building.corners.map(toGround)
    if (building.height_ft !== undefined || middles.some((middle) => containsPoint(corners, middle))) return []
    return [
      {
        severity: 'note',
        id: 'scene.building-without-height',
        message: `building ${id} of the site plan has no height and no roof plane stands over it: it throws no shade`,
        where: `site_plan.buildings.${id}`,
        fix: `State site_plan.buildings.${id}.height_ft, the height of its top above the ground.`,
      },
    ]
  })
}
