import { crossingEdges, own, signedAreaFt2 } from '../../values/index.js'
import type { Obstacle, Project } from '../project-types.generated.js'
import type { Report, Rule } from './rule.js'

/** A smaller figure is a slip, square ft. */
const LEAST_AREA_FT2 = 1e-3

/** Every obstacle has one place and one shape, and somewhere to stand. */
export const checkObstacles: Rule = (project, report) => {
  for (const [id, obstacle] of Object.entries(project.site.obstacles ?? {})) {
    const path = ['site', 'obstacles', id]
    const tell: Tell = (key, message, at = 'key') => report([...path, key], message, at)
    checkHeights(obstacle, tell)
    if (obstacle.corners !== undefined) checkFigure(obstacle, tell)
    else if (obstacle.at !== undefined) checkAt(obstacle, tell)
    else checkSeen(obstacle, tell)
    if (obstacle.corners === undefined && obstacle.at === undefined) continue
    if (obstacle.corners !== undefined && obstacle.at !== undefined)
      tell('at', 'at and corners both give its place; keep one of them')
    if (obstacle.bearing_deg !== undefined || obstacle.distance_ft !== undefined)
      tell(
        obstacle.bearing_deg === undefined ? 'distance_ft' : 'bearing_deg',
        'its place is given by at or corners already; leave bearing_deg and distance_ft out',
      )
    checkStands(project, obstacle, tell)
  }
}

/** Places of roof planes are given once, with the height of the eave. */
export const checkEavePlaces: Rule = (project, report) => {
  for (const [id, plane] of Object.entries(project.roof_planes)) {
    if (plane.eave_left === undefined) continue
    const path = ['roof_planes', id, 'eave_left']
    if (own(project.site_plan?.roof_planes, id) !== undefined)
      report(path, `site_plan.roof_planes.${id} gives the place of this plane already; keep one of them`, 'key')
    if (plane.eave_height_ft === undefined)
      report(
        ['roof_planes', id, 'eave_height_ft'],
        'missing; a plane with eave_left stands in space and needs the height of its eave, ft above the ground',
        'parent',
      )
  }
}

type Tell = (key: string, message: string, at?: Parameters<Report>[2]) => void

function checkHeights({ height_ft: top, base_height_ft: base }: Obstacle, tell: Tell): void {
  if (base !== undefined && base >= top)
    tell(
      'base_height_ft',
      `${base} ft is not below height_ft, ${top} ft; the lower edge of a thing is below its top`,
      'value',
    )
}

function checkSeen(obstacle: Obstacle, tell: Tell): void {
  const how =
    'state where it is: bearing_deg, distance_ft and width_ft as seen from the arrays, or at or corners on the plan'
  for (const key of ['bearing_deg', 'distance_ft', 'width_ft'] as const)
    if (obstacle[key] === undefined) tell(key, `missing; ${how}`, 'parent')
  for (const key of ['length_ft', 'faces_deg', 'ground_ft'] as const)
    if (obstacle[key] !== undefined)
      tell(key, 'goes with at or corners only; a thing seen from the arrays is an upright rectangle that faces them')
}

function checkAt(obstacle: Obstacle, tell: Tell): void {
  if (obstacle.width_ft === undefined)
    tell('width_ft', 'missing; state the diameter of a round thing, or the width of a box with length_ft', 'parent')
  if (obstacle.faces_deg !== undefined && obstacle.length_ft === undefined)
    tell('faces_deg', 'a round thing faces nowhere; state length_ft for a box, or leave it out')
}

function checkFigure(obstacle: Obstacle, tell: Tell): void {
  for (const key of ['width_ft', 'length_ft', 'faces_deg'] as const)
    if (obstacle[key] !== undefined) tell(key, 'corners give the figure already; leave it out')
  const corners = (obstacle.corners ?? []).map(({ x_ft: xFt, y_ft: yFt }) => ({ xFt, yFt }))
  if (Math.abs(signedAreaFt2(corners)) < LEAST_AREA_FT2)
    tell('corners', 'the figure has no area: all its corners lie on one line; check the corners', 'value')
  const crossing = crossingEdges(corners)
  if (crossing !== undefined)
    tell(
      'corners',
      `the figure crosses or touches itself: the edge from corner ${crossing[0] + 1} meets the edge from corner ${crossing[1] + 1}; list the corners in order round it`,
      'value',
    )
}

/** What has a place of the plan shades planes that stand in space, and no others. */
function checkStands(project: Project, obstacle: Obstacle, tell: Tell): void {
  const arrays = Object.entries(project.arrays).filter(([id]) => obstacle.arrays?.includes(id) !== false)
  const planes = arrays.map(([, array]) => array.roof_plane)
  const stands = planes.some((id) => {
    const plane = own(project.roof_planes, id)
    const place = own(project.site_plan?.roof_planes, id)?.eave_left ?? plane?.eave_left
    return place !== undefined && plane?.eave_height_ft !== undefined
  })
  if (stands || planes.length === 0) return
  tell(
    obstacle.corners === undefined ? 'at' : 'corners',
    'has a place on the plan, but none of the roof planes that it could shade does; state eave_left (or site_plan.roof_planes) and eave_height_ft of these planes, or bearing_deg, distance_ft and width_ft here',
  )
}
