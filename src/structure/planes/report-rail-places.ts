import { feetOf, inchesOf, own, type Inches } from '../../values/index.js'
import type { RoofProject } from '../../project/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { PlaneGeometry } from '../model/index.js'
import { railOnObstructionIn, type RailLine } from '../../roof/index.js'

/** Findings about rails that lie on an obstruction or pass the edge of the roof. */
export function reportRailPlaces(
  project: RoofProject,
  plane: PlaneGeometry,
  lines: readonly RailLine[],
  worksheet: Worksheet,
): void {
  const obstructions = Object.entries(own(project.roof_planes, plane.id)?.obstructions ?? {})
  for (const line of lines) {
    const where = `arrays.${line.array}.arrangement`
    for (const [id, obstruction] of obstructions) {
      const lengthIn = railOnObstructionIn(obstruction, line.yIn, line.startIn, line.endIn)
      if (lengthIn < 0.01) continue
      const keep = obstruction.clearance_in ?? 0
      worksheet.find({
        severity: 'error',
        id: 'structure.rail-on-obstruction',
        message: `rail ${line.id} lies over ${up(lengthIn)} of obstruction '${id}' of plane '${plane.id}'${keep > 0 ? ` with the ${keep} in to keep free round it` : ''}`,
        where,
        fix: `Move the modules ${up(lengthIn)} away from it, or leave a module out with omit; a rail needs room for its end clamp beside an obstruction.`,
      })
    }
    const pastIn = pastEdgeIn(plane, line)
    if (pastIn < 0.01) continue
    worksheet.find({
      severity: 'error',
      id: 'structure.rail-past-edge',
      message: `rail ${line.id} reaches ${up(pastIn)} past the edge of plane '${plane.id}'`,
      where,
      fix: `Move the modules ${up(pastIn)} away from the edge, or leave a module out with omit; the rail needs its end past the frame for the end clamp.`,
    })
  }
}

/** Inches with one decimal, rounded up so that what is reported is enough. */
function up(valueIn: Inches): string {
  return `${(Math.ceil(valueIn * 10 - 1e-6) / 10).toFixed(1)} in`
}

/** How far the longer end of a rail passes the edge of the plane at its height, in; 0 when it does not. */
function pastEdgeIn(plane: PlaneGeometry, line: RailLine): Inches {
  const yFt = feetOf(line.yIn)
  const crossings = plane.edges
    .filter(({ from, to }) => from.yFt > yFt !== to.yFt > yFt)
    .map(({ from, to }) => 12 * (from.xFt + ((yFt - from.yFt) / (to.yFt - from.yFt)) * (to.xFt - from.xFt)))
    .sort((a, b) => a - b)
  const [first, last] = [line.modules[0], line.modules.at(-1)]
  if (first === undefined || last === undefined) return 0
  const left = crossings.filter((x) => x <= inchesOf(first.xFt + first.widthFt / 2)).at(-1)
  const right = crossings.find((x) => x >= inchesOf(last.xFt + last.widthFt / 2))
  // A rail that lies at no place of the plane is told by its modules.
  if (left === undefined || right === undefined) return 0
  return Math.max(0, left - line.startIn, line.endIn - right)
}
