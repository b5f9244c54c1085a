import { tiltDegOf } from '../../project/facts.js'
import type { Project, PlanPoint, RoofPlane } from '../../project/index.js'
import { own, radiansOf, type Point } from '../../values/index.js'
import { xy, type XY } from '../model/index.js'

export const planPoint = ({ x_ft: x, y_ft: y }: PlanPoint): XY => xy(x, y)

/**
 * Where a point of a roof plane lies in the site plan, ft, or undefined when the plan does not place that plane.
 * Up the slope counts by its level part only.
 */
export function planeInPlan(project: Project, planeId: string): ((point: Point) => XY) | undefined {
  const plane: RoofPlane | undefined = own(project.roof_planes, planeId)
  const place = own(project.site_plan?.roof_planes, planeId)?.eave_left ?? plane?.eave_left
  if (place === undefined || plane === undefined) return undefined
  const flat = Math.cos(radiansOf(tiltDegOf(plane, `roof_planes.${planeId}`)))
  const turn = (degrees: number): XY => {
    const angle = radiansOf(degrees - (project.site_plan?.up_azimuth_deg ?? 0))
    return xy(Math.sin(angle), Math.cos(angle))
  }
  const up = turn(plane.azimuth_deg + 180)
  const right = turn(plane.azimuth_deg + 270)
  return ({ xFt, yFt }) =>
    xy(place.x_ft + xFt * right.x + yFt * flat * up.x, place.y_ft + xFt * right.y + yFt * flat * up.y)
}
