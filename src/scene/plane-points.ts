import type { Project } from '../project/index.js'
import type { Point } from '../sun/index.js'
import { containsPoint, own, type Point as PlanePoint } from '../values/index.js'
import { onRoof, type RoofFrame } from './roof-frame.js'
import { outlineOf } from './roof-solids.js'

/** Points along each side of a roof plane at which it is looked for inside other things. */
const GRID = 12

/** Points of the surface of a plane in space. */
export function planePoints(project: Project, frame: RoofFrame): Point[] {
  const plane = own(project.roof_planes, frame.planeId)
  const outline = plane === undefined ? [] : outlineOf(frame.planeId, plane)
  const [xs, ys] = [outline.map(({ xFt }) => xFt), outline.map(({ yFt }) => yFt)]
  const [left, low] = [Math.min(...xs), Math.min(...ys)]
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - low]
  return Array.from({ length: GRID * GRID }, (_, index): PlanePoint => ({
    xFt: left + ((index % GRID) + 0.5) * (width / GRID),
    yFt: low + (Math.floor(index / GRID) + 0.5) * (height / GRID),
  }))
    .filter((point) => outline.length > 0 && containsPoint(outline, point))
    .map((point) => onRoof(frame, point))
}
