import type { SpaceProject } from '../project/index.js'
import { radiansOf, type Point as PlanePoint } from '../values/index.js'

/** From plan coordinates, x right and y up on the drawing, to east (x) and north (y), ft. */
export type ToGround = (point: { readonly x_ft: number; readonly y_ft: number }) => PlanePoint

/** How the drawing lies on the ground: turned by the direction that is up on it; north up where there is no site plan. */
export function planToGround({ site_plan: plan }: Pick<SpaceProject, 'site_plan'>): ToGround {
  const angle = radiansOf(plan?.up_azimuth_deg ?? 0)
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)]
  // Up on the drawing is (sin, cos) in east and north, right of it is (cos, -sin).
  return ({ x_ft: x, y_ft: y }) => ({ xFt: x * cos + y * sin, yFt: y * cos - x * sin })
}
