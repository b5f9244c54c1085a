import type { Obstacle, SpaceProject } from '../project/index.js'
import type { Point } from '../sun/index.js'
import { radiansOf, type Point as PlanePoint } from '../values/index.js'
import { planToGround } from './plan-axes.js'
import { plate } from './plate.js'
import { level, prisms, type SolidTraits } from './prism.js'
import type { Solid } from './solid.js'

/** Sides of the figure that stands round a round thing. */
const ROUND_SIDES = 16
const NO_FACES = new Float64Array(0)
/** What is seen from the arrays without a lower edge reaches this far down, ft. */
const DEEP_FT = 1000

/** Whether a thing stands at a place of the plan, rather than at a distance from the arrays. */
export function isAtPlace(obstacle: Obstacle): boolean {
  return obstacle.at !== undefined || obstacle.corners !== undefined
}

/** Trees, houses and walls at their places of the plan, and buildings with a height. */
export function placedObstacles(project: SpaceProject): Solid[] {
  const toGround = planToGround(project)
  const things = Object.entries(project.site.obstacles ?? {})
    .filter(([, obstacle]) => isAtPlace(obstacle))
    .flatMap(([id, obstacle]) => {
      const ground = obstacle.ground_ft ?? 0
      const base = level(ground + (obstacle.base_height_ft ?? 0))
      const top = level(ground + obstacle.height_ft)
      const solids = prisms(footprint(obstacle, toGround), base, top, traitsOf(id, obstacle))
      if (obstacle.at === undefined || obstacle.length_ft !== undefined) return solids
      const { xFt, yFt } = toGround(obstacle.at)
      const radiusFt = (obstacle.width_ft ?? 0) / 2
      const round = { east: xFt, north: yFt, radiusFt, base: base.up, top: top.up }
      return solids.map((solid): Solid => ({ ...solid, faces: NO_FACES, round }))
    })
  const buildings = Object.entries(project.site_plan?.buildings ?? {}).flatMap(([id, building]) =>
    building.height_ft === undefined
      ? []
      : prisms(building.corners.map(toGround), level(0), level(building.height_ft), {
          path: `site_plan.buildings.${id}`,
          transmittance: undefined,
          arrays: undefined,
        }),
  )
  return [...things, ...buildings]
}

/** Its footprint on the ground, ft: x east and y north. */
export function footprint(obstacle: Obstacle, toGround: ReturnType<typeof planToGround>): PlanePoint[] {
  if (obstacle.corners !== undefined) return obstacle.corners.map(toGround)
  const middle = toGround(obstacle.at ?? { x_ft: 0, y_ft: 0 })
  const halfWidth = (obstacle.width_ft ?? 0) / 2
  if (obstacle.length_ft === undefined) {
    const reach = halfWidth / Math.cos(Math.PI / ROUND_SIDES)
    return Array.from({ length: ROUND_SIDES }, (_, index): PlanePoint => {
      const angle = (2 * Math.PI * index) / ROUND_SIDES
      return { xFt: middle.xFt + reach * Math.cos(angle), yFt: middle.yFt + reach * Math.sin(angle) }
    })
  }
  const halfLength = obstacle.length_ft / 2
  const faces = radiansOf(obstacle.faces_deg ?? 0)
  const [sin, cos] = [Math.sin(faces), Math.cos(faces)]
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([across, ahead]): PlanePoint => ({
    xFt: middle.xFt + across! * halfWidth * cos + ahead! * halfLength * sin,
    yFt: middle.yFt - across! * halfWidth * sin + ahead! * halfLength * cos,
  }))
}

/**
 * Things that the project states by bearing and distance: upright rectangles that face the middle of the arrays.
 *
 * @param middleOf Middle of the modules of the arrays that are meant (all for undefined), ft; undefined where none of
 *   them is here.
 */
export function seenObstacles(
  project: SpaceProject,
  middleOf: (arrays: readonly string[] | undefined) => Point | undefined,
): Solid[] {
  return Object.entries(project.site.obstacles ?? {})
    .filter(([, obstacle]) => !isAtPlace(obstacle))
    .flatMap(([id, obstacle]) => {
      const middle = middleOf(obstacle.arrays)
      return middle === undefined ? [] : [seenObstacle(obstacle, middle, traitsOf(id, obstacle))]
    })
}

function seenObstacle(obstacle: Obstacle, middle: Point, traits: SolidTraits): Solid {
  const bearing = radiansOf(obstacle.bearing_deg ?? 0)
  const [east, north] = [Math.sin(bearing), Math.cos(bearing)]
  const distance = obstacle.distance_ft ?? 0
  const half = (obstacle.width_ft ?? 0) / 2
  const low = obstacle.base_height_ft ?? -DEEP_FT
  const corner = (across: number, up: number): Point => ({
    east: middle.east + distance * east + across * half * north,
    north: middle.north + distance * north - across * half * east,
    up: middle.up + up,
  })
  const high = obstacle.height_ft
  return plate([corner(-1, low), corner(1, low), corner(1, high), corner(-1, high)], traits)
}

function traitsOf(id: string, obstacle: Obstacle): SolidTraits {
  const stated = obstacle.transmittance ?? 0
  const months = typeof stated === 'number' ? Array.from({ length: 12 }, () => stated) : stated
  return {
    path: `site.obstacles.${id}`,
    transmittance: months.some((share) => share > 0) ? months : undefined,
    arrays: obstacle.arrays,
  }
}
