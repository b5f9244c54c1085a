import type { Project } from '../../project/index.js'
import { onRoof, outlineOf, planToGround, type Scene } from '../../scene/index.js'
import type { ModulePlacement } from '../../roof/index.js'
import { dot, type Point } from '../../sun/index.js'
import { SAFETY_FIGURES } from '../../tables/fieldwork/index.js'
import { own, type Feet } from '../../values/index.js'
import type { HangingLine } from './span.js'

/** How high over the surface people on a roof reach with arms and tools, ft. */
export const REACH_FT = 8

/** Least distance from a line to a place where people work. */
export interface WorkDistance {
  /** Path in the project file. */
  readonly to: string
  readonly what: string
  readonly distanceFt: Feet
  /** By how much the true value can be less, ft. */
  readonly errorFt: Feet
}

/** Distances of a line to ladders at their places and to people on the roof at the modules. */
export function workDistances(
  project: Project,
  scene: Scene,
  placements: readonly ModulePlacement[],
  hanging: HangingLine,
): WorkDistance[] {
  const places = hanging.spans.flat()
  const errorFt = hanging.stepFt / 2
  const least = (to: (place: Point) => Feet): Feet => Math.min(...places.map(to))
  const ladders = laddersOf(project, scene).map(({ to, from, top }) => ({
    to,
    what: `a ladder there (to the eave at ${(top.up - SAFETY_FIGURES.ladderAboveEaveFt).toFixed(1)} ft and ${SAFETY_FIGURES.ladderAboveEaveFt} ft above it)`,
    distanceFt: least((place) => toSegmentFt(place, from, top)),
    errorFt,
  }))
  const people = Object.keys(project.arrays).flatMap((id): WorkDistance[] => {
    const distance = toPeople(project, scene, placements, id)
    return distance === undefined
      ? []
      : [
          {
            to: `arrays.${id}`,
            what: `people who reach ${REACH_FT} ft up from the roof at the modules`,
            distanceFt: least(distance),
            errorFt,
          },
        ]
  })
  return [...people, ...ladders]
}

/** A ladder from each place on the ground to the nearest place of an eave, and on above it. */
function laddersOf(project: Project, scene: Scene): { to: string; from: Point; top: Point }[] {
  const toGround = planToGround(project)
  const eaves = [...scene.frames.values()].flatMap((frame) => {
    const plane = own(project.roof_planes, frame.planeId)
    const low = (plane === undefined || !frame.placed ? [] : outlineOf(frame.planeId, plane)).filter(
      ({ yFt }) => Math.abs(yFt) < 1e-6,
    )
    if (low.length < 2) return []
    const xs = low.map(({ xFt }) => xFt)
    return [[Math.min(...xs), Math.max(...xs)].map((xFt) => onRoof(frame, { xFt, yFt: 0 })) as [Point, Point]]
  })
  return (project.site_plan?.ground_access ?? []).flatMap((place, index) => {
    const { xFt, yFt } = toGround(place)
    const from: Point = { east: xFt, north: yFt, up: 0 }
    const tops = eaves.map(([a, b]) => nearestOn(from, a, b))
    const levelFt = (top: Point): Feet => Math.hypot(top.east - from.east, top.north - from.north)
    const nearest = Math.min(...tops.map(levelFt))
    const top = tops.find((each) => levelFt(each) === nearest)
    return top === undefined
      ? []
      : [{ to: `site_plan.ground_access.${index}`, from, top: beyond(from, top, SAFETY_FIGURES.ladderAboveEaveFt) }]
  })
}

/** The ladder goes on in its own direction until it is so much higher. */
function beyond(from: Point, eave: Point, byFt: Feet): Point {
  const more = byFt / Math.max(eave.up - from.up, 1e-9)
  return {
    east: eave.east + (eave.east - from.east) * more,
    north: eave.north + (eave.north - from.north) * more,
    up: eave.up + byFt,
  }
}

/** In plan, on a level line. */
function nearestOn(from: Point, a: Point, b: Point): Point {
  const [de, dn] = [b.east - a.east, b.north - a.north]
  const along = ((from.east - a.east) * de + (from.north - a.north) * dn) / Math.max(de * de + dn * dn, 1e-12)
  const t = Math.max(0, Math.min(1, along))
  return { east: a.east + de * t, north: a.north + dn * t, up: a.up }
}

function toSegmentFt(point: Point, a: Point, b: Point): Feet {
  const minus = (p: Point, q: Point): Point => ({ east: p.east - q.east, north: p.north - q.north, up: p.up - q.up })
  const [way, off] = [minus(b, a), minus(point, a)]
  const t = Math.min(1, Math.max(0, dot(off, way) / Math.max(dot(way, way), 1e-12)))
  return Math.hypot(off.east - t * way.east, off.north - t * way.north, off.up - t * way.up)
}

/**
 * Distance to the space that people fill: over the rectangle along and up the roof that holds all modules of an array
 * (the whole plane where they have no places), from its surface to their reach. Undefined off planes in space.
 */
function toPeople(
  project: Project,
  scene: Scene,
  placements: readonly ModulePlacement[],
  arrayId: string,
): ((place: Point) => Feet) | undefined {
  const planeId = own(project.arrays, arrayId)?.roof_plane ?? ''
  const [plane, frame] = [own(project.roof_planes, planeId), scene.frames.get(planeId)]
  if (plane === undefined || frame === undefined || !frame.placed) return undefined
  const modules = placements.filter(({ array }) => array === arrayId)
  const corners =
    modules.length > 0
      ? modules.flatMap(({ xFt, yFt, widthFt, heightFt }) => [
          { xFt, yFt },
          { xFt: xFt + widthFt, yFt: yFt + heightFt },
        ])
      : outlineOf(planeId, plane)
  if (corners.length === 0) return undefined
  const [xs, ys] = [corners.map(({ xFt }) => xFt), corners.map(({ yFt }) => yFt)]
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const { origin, axes } = frame
  return (place) => {
    const off = { east: place.east - origin.east, north: place.north - origin.north, up: place.up - origin.up }
    const [x, y, n] = [dot(off, axes.x), dot(off, axes.y), dot(off, axes.normal)]
    const beside = Math.max(0, left - x, x - right)
    // The height of the hand above the roof at which it is nearest; the distance is convex in it.
    const at = (handFt: Feet): Feet => {
      const slope = y - handFt * axes.y.up
      return Math.hypot(beside, Math.max(0, low - slope, slope - high), n - handFt * axes.normal.up)
    }
    let [from, to] = [0, REACH_FT]
    for (let step = 0; step < 30; step++) {
      const third = (to - from) / 3
      if (at(from + third) < at(to - third)) to -= third
      else from += third
    }
    return Math.min(at(0), at(REACH_FT), at((from + to) / 2))
  }
}
