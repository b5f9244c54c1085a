import type { Project, RoutePoint } from '../project/index.js'
import { containsPoint, distanceToSegmentFt, segmentsOf, type Feet, type Point } from '../values/index.js'
import { planToGround } from './plan-axes.js'
import { heightAt } from './prism.js'
import { onRoof, roofFrame, roofSheet } from './roof-frame.js'
import { outlineOf } from './roof-solids.js'

/** A point of the way in space. */
interface Height {
  readonly upFt: Feet
  /** Roof plane that it lies on. */
  readonly planeId: string | undefined
}

/**
 * Length of a stretch of the way on the site plan from the heights of its points: as stated, else of the highest roof plane below
 * them. A piece on one roof plane runs along its slope; every other one runs level and then straight up or down, which is
 * the longer way.
 *
 * @param begin Index of the first point. @param end Behind the last one.
 * @returns A sentence that says which point has no height.
 */
export function climbOf(
  project: Pick<Project, 'site_plan' | 'roof_planes'>,
  route: readonly RoutePoint[],
  begin: number,
  end: number,
): { readonly lineFt: Feet; readonly verticalFt: Feet } | string {
  const points = route.slice(begin, end)
  const heights = points.map((point) => heightOf(project, point))
  const missing = heights.indexOf(undefined)
  if (missing >= 0)
    return `point ${begin + missing + 1} of site_plan.raceway_route lies on no roof plane with a place and a height: state its height_ft, or vertical_ft`
  let [lineFt, verticalFt] = [0, 0]
  for (let index = 1; index < points.length; index += 1) {
    const [a, b] = [points[index - 1]!, points[index]!]
    const [from, to] = [heights[index - 1]!, heights[index]!]
    const levelFt = Math.hypot(b.x_ft - a.x_ft, b.y_ft - a.y_ft)
    const climbFt = Math.abs(to.upFt - from.upFt)
    if (from.planeId !== undefined && from.planeId === to.planeId) lineFt += Math.hypot(levelFt, climbFt)
    else {
      lineFt += levelFt
      verticalFt += climbFt
    }
  }
  return { lineFt, verticalFt }
}

/** A point this near to an edge lies on the plane, ft. */
const EDGE_FT = 0.1

function isOver(outline: readonly Point[], point: Point): boolean {
  if (outline.length === 0) return false
  return (
    containsPoint(outline, point) || segmentsOf(outline).some((edge) => distanceToSegmentFt(point, edge) <= EDGE_FT)
  )
}

function heightOf(project: Pick<Project, 'site_plan' | 'roof_planes'>, point: RoutePoint): Height | undefined {
  if (point.height_ft !== undefined) return { upFt: point.height_ft, planeId: undefined }
  const { xFt: east, yFt: north } = planToGround(project)(point)
  let highest: Height | undefined
  for (const [planeId, plane] of Object.entries(project.roof_planes)) {
    const frame = roofFrame(project, planeId, plane)
    const sheet = roofSheet(frame)
    if (!frame.placed || sheet === undefined) continue
    const outline = outlineOf(planeId, plane).map((corner) => {
      const at = onRoof(frame, corner)
      return { xFt: at.east, yFt: at.north }
    })
    if (!isOver(outline, { xFt: east, yFt: north })) continue
    const upFt = heightAt(sheet, east, north)
    if (highest === undefined || upFt > highest.upFt) highest = { upFt, planeId }
  }
  return highest
}
