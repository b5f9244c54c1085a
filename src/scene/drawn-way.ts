import type { DrawnWay, PlanPoint, Project } from '../project/index.js'
import { own, type Feet } from '../values/index.js'
import { climbOf } from './route-heights.js'

/** Length of a line that the drawings show. */
export interface DrawnLength {
  /** Line and up and down together. */
  readonly lengthFt: Feet
  /** Of the line itself: along the slope on a roof, else level on the site plan. */
  readonly lineFt: Feet
  readonly verticalFt: Feet
  readonly on: 'roof' | 'site'
  /** Path of the line in the project file. */
  readonly from: string
  readonly verticalFrom: string
}

/**
 * The drawn way that a segment follows.
 *
 * @param way The way that the project names; undefined where it names none.
 * @param onlyRoof Whether it may be the raceway of the one roof plane that shows one.
 * @returns A sentence that says why there is none.
 */
export function drawnWay(
  project: Pick<Project, 'site_plan' | 'roof_planes'>,
  way: DrawnWay | undefined,
  onlyRoof: boolean,
): DrawnLength | string {
  const { site_plan: plan } = project
  if (way === undefined) {
    if (!onlyRoof) return 'no way is named for it'
    const drawn = Object.entries(plan?.roof_planes ?? {}).filter(([, plane]) => plane.raceway !== undefined)
    const [only] = drawn
    if (only === undefined || drawn.length > 1)
      return drawn.length > 1
        ? `${drawn.length} roof planes show a raceway`
        : 'no roof plane of site_plan shows a raceway'
    return onPlane(only[0], only[1].raceway ?? [])
  }
  if ('roof_plane' in way) {
    const raceway = own(plan?.roof_planes, way.roof_plane)?.raceway
    return raceway === undefined
      ? `site_plan.roof_planes.${way.roof_plane} shows no raceway`
      : onPlane(way.roof_plane, raceway)
  }
  const route = plan?.raceway_route
  if (route === undefined) return 'site_plan.raceway_route is not drawn'
  const { from_point: first, to_point: last, vertical_ft: verticalFt } = way
  if (Math.max(first, last) > route.length)
    return `site_plan.raceway_route has ${route.length} points, not ${Math.max(first, last)}`
  const from = `site_plan.raceway_route, points ${first} to ${last}`
  const [begin, end] = [Math.min(first, last) - 1, Math.max(first, last)]
  if (verticalFt !== undefined) {
    const lineFt = lineLengthFt(route.slice(begin, end))
    return { lengthFt: lineFt + verticalFt, lineFt, verticalFt, on: 'site', from, verticalFrom: 'vertical_ft' }
  }
  const climb = climbOf(project, route, begin, end)
  if (typeof climb === 'string') return climb
  return {
    lengthFt: climb.lineFt + climb.verticalFt,
    ...climb,
    on: 'site',
    from,
    verticalFrom: 'heights of the points: height_ft, else of the roof plane below them',
  }
}

/** Level length of the whole way on the site plan, ft; undefined where none is drawn. */
export function drawnRouteFt({ site_plan: plan }: Pick<Project, 'site_plan'>): Feet | undefined {
  return plan?.raceway_route === undefined ? undefined : lineLengthFt(plan.raceway_route)
}

function onPlane(id: string, points: readonly PlanPoint[]): DrawnLength {
  const lineFt = lineLengthFt(points)
  return {
    lengthFt: lineFt,
    lineFt,
    verticalFt: 0,
    on: 'roof',
    from: `site_plan.roof_planes.${id}.raceway`,
    verticalFrom: 'drawn on the slope, nothing to add',
  }
}

function lineLengthFt(points: readonly PlanPoint[]): Feet {
  return points.slice(1).reduce((sum, point, i) => {
    const before = points[i] ?? point
    return sum + Math.hypot(point.x_ft - before.x_ft, point.y_ft - before.y_ft)
  }, 0)
}
