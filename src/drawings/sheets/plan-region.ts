import { cornersOf, xy, type Box, type Primitive, type XY } from '../model/index.js'
import { clippedLine, clippedTo } from './plane-figures.js'

/**
 * What of some figures lies within a part of a plan, ft: areas and lines end at its edges, signs and words are there whole or
 * not at all. Dimensions and leaders are left out: a part has its own.
 */
export function withinRegion(primitives: readonly Primitive[], region: Box): Primitive[] {
  return primitives.flatMap((each): Primitive[] => {
    switch (each.kind) {
      case 'path':
        return pathWithin(each, region)
      case 'rectangle':
        return isWithin(xy(each.x + each.width / 2, each.y + each.height / 2), region) ? [each] : []
      case 'circle':
        return isWithin(each.center, region) ? [each] : []
      case 'text':
        return isWithin(each.at, region) ? [each] : []
      case 'dimension':
      case 'leader':
        return []
    }
  })
}

/** Whether a point lies within a part of a plan, its edges included. */
export function isWithin({ x, y }: XY, region: Box): boolean {
  const slack = 1e-6
  return (
    x >= region.x - slack &&
    y >= region.y - slack &&
    x <= region.x + region.width + slack &&
    y <= region.y + region.height + slack
  )
}

function pathWithin(path: Primitive & { kind: 'path' }, region: Box): Primitive[] {
  if (path.points.every((point) => isWithin(point, region))) return [path]
  const { closed = false, fill, hatch, ...line } = path
  const area = closed && (fill !== undefined || hatch !== undefined) ? clippedTo(path.points, cornersOf(region)) : []
  // The edge of the part is no edge of the figure: its area is cut there, its line is not drawn along it.
  const ground: Primitive[] = area.length < 3 ? [] : [{ ...path, points: area, pen: undefined }]
  const ways = closed ? [...path.points, ...path.points.slice(0, 1)] : path.points
  return [...ground, ...runs(ways, region).map((points): Primitive => ({ ...line, points }))]
}

/** The pieces of a line within a part. */
function runs(points: readonly XY[], region: Box): XY[][] {
  const found: XY[][] = []
  for (const [index, to] of points.entries()) {
    const from = points[index - 1]
    const piece = from === undefined ? undefined : clippedLine([from, to], region)
    if (piece === undefined) continue
    const last = found.at(-1)
    const end = last?.at(-1)
    if (end !== undefined && Math.hypot(end.x - piece[0].x, end.y - piece[0].y) < 1e-9) last?.push(piece[1])
    else found.push([...piece])
  }
  return found
}
