import type { Project, PlanPoint } from '../../project/index.js'
import { roofFrame } from '../../scene/index.js'
import type { Direction } from '../../sun/index.js'
import { own, radiansOf, type Point } from '../../values/index.js'
import { xy, type XY } from '../model/index.js'

export const planPoint = ({ x_ft: x, y_ft: y }: PlanPoint): XY => xy(x, y)

/**
 * Where a point of a roof plane lies in the site plan, ft, or undefined when the plan does not place that plane.
 * Up the slope counts by its level part only.
 */
export function planeInPlan(project: Project, planeId: string): ((point: Point) => XY) | undefined {
  const plane = own(project.roof_planes, planeId)
  const place = own(project.site_plan?.roof_planes, planeId)?.eave_left ?? plane?.eave_left
  if (place === undefined || plane === undefined) return undefined
  // The drawing counts from its own corner and is turned; directions are the scene's.
  const { axes } = roofFrame(project, planeId, plane)
  const angle = radiansOf(project.site_plan?.up_azimuth_deg ?? 0)
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)]
  const drawn = ({ east, north }: Direction): XY => xy(east * cos - north * sin, east * sin + north * cos)
  const [right, up] = [drawn(axes.x), drawn(axes.y)]
  return ({ xFt, yFt }) => xy(place.x_ft + xFt * right.x + yFt * up.x, place.y_ft + xFt * right.y + yFt * up.y)
}
