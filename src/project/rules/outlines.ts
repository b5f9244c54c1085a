import type { Obstruction, Outline, RoofPlane } from '../project-types.generated.js'
import { showNumber } from '../words.js'
import type { Report, Rule } from './rule.js'
import { signedAreaFt2, type Feet } from '../../values/index.js'

type Shape = Outline['shape']
type Field = Exclude<keyof Outline, 'shape'>

const NEEDED: Readonly<Record<Shape, readonly Field[]>> = {
  rectangle: ['width_ft', 'depth_ft'],
  hip: ['width_ft', 'depth_ft', 'ridge_ft'],
  triangle: ['width_ft', 'depth_ft'],
  l_shape: ['width_ft', 'depth_ft', 'notch_width_ft', 'notch_depth_ft', 'notch_at'],
  polygon: ['corners'],
}
const OPTIONAL: Readonly<Record<Shape, readonly Field[]>> = {
  rectangle: ['left_edge', 'right_edge', 'upper_edge'],
  hip: ['ridge_offset_ft', 'left_edge', 'right_edge', 'upper_edge'],
  triangle: ['ridge_offset_ft', 'left_edge', 'right_edge'],
  l_shape: ['left_edge', 'right_edge', 'upper_edge'],
  polygon: [],
}

/** An outline has the sizes that its shape needs and no others, and what stands on the plane lies on it. */
export const checkOutlines: Rule = (project, report) => {
  for (const [id, plane] of Object.entries(project.roof_planes)) {
    const { outline } = plane
    if (outline === undefined) continue
    checkFields(id, outline, report)
    if (
      outline.corners !== undefined &&
      signedAreaFt2(outline.corners.map(({ x_ft: xFt, y_ft: yFt }) => ({ xFt, yFt }))) <= 0
    ) {
      const message =
        'the corners do not go counter-clockwise round a surface; list them so from the left end of the eave'
      report(['roof_planes', id, 'outline', 'corners'], message, 'key')
    }
    checkObstructions(id, plane, outline, report)
  }
}

function checkFields(id: string, outline: Outline, report: Report): void {
  const { shape, ...fields } = outline
  const path = (field: string) => ['roof_planes', id, 'outline', field]
  const needed = NEEDED[shape]
  const known = [...needed, ...OPTIONAL[shape]]
  for (const field of needed) {
    if (outline[field] === undefined)
      report(path(field), `missing; the shape ${shape} needs ${needed.join(', ')}`, 'parent')
  }
  for (const field of Object.keys(fields)) {
    if (known.some((name) => name === field)) continue
    report(path(field), `the shape ${shape} has no ${field}; it takes ${known.join(', ')}`, 'key')
  }
}

function checkObstructions(id: string, plane: RoofPlane, outline: Outline, report: Report): void {
  const { shape, width_ft: width, depth_ft: depth } = outline
  if (shape !== 'rectangle' || width === undefined || depth === undefined) return
  for (const [name, box] of Object.entries(plane.obstructions ?? {})) {
    if (overlaps(box, width, depth)) continue
    const message =
      `lies off the plane: x ${span(box.x_ft, box.width_ft)}, y ${span(box.y_ft, box.length_ft)}; ` +
      `the plane reaches from 0 to ${width} ft along the eave and from 0 to ${depth} ft up the slope`
    report(['roof_planes', id, 'obstructions', name], message, 'key')
  }
}

function overlaps(box: Obstruction, widthFt: Feet, depthFt: Feet): boolean {
  const { x_ft: x, y_ft: y, width_ft: width, length_ft: length } = box
  return x < widthFt && x + width > 0 && y < depthFt && y + length > 0
}

function span(start: number, size: number): string {
  return `${showNumber(start)} to ${showNumber(start + size)} ft`
}
