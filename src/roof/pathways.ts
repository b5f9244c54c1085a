import { segmentStrip } from './keep-out.js'
import { TOLERANCE_FT, boxCorners, convexOverlap, type Feet, type Point } from '../values/index.js'
import type { RoofSurface } from './roof-surface.js'

/** A way from the lowest roof edge to the ridge that a firefighter may walk. */
export interface Pathway {
  /** `left`, `right`: along the side of the plane; `straight`: up the slope at some x. */
  readonly kind: 'left' | 'right' | 'straight'
  readonly widthFt: Feet
  /** Convex figures that together cover it, ft. */
  readonly figures: readonly (readonly Point[])[]
}

/**
 * Pathways of a width that a plane offers between the things that stand on it: along its left and right side, and
 * straight up from eave to ridge beside a side, an obstruction or a module.
 *
 * @param blockers Convex figures that no pathway may cross: obstructions and modules, ft.
 * @param sidesOnly Whether only the sides count, as for a pathway that straddles two planes.
 */
export function pathwayOptions(
  surface: RoofSurface,
  blockers: readonly (readonly Point[])[],
  widthFt: Feet,
  sidesOnly = false,
): Pathway[] {
  const sides = [sidePathway(surface, 'left', widthFt), sidePathway(surface, 'right', widthFt)].filter(
    (side): side is Pathway => side !== undefined,
  )
  const starts = sidesOnly ? [] : straightStarts(surface, blockers, widthFt)
  const straight = starts.flatMap((xFt) => straightPathway(surface, xFt, widthFt) ?? [])
  const different = straight.filter((option) => !sides.some((side) => coveredBy(option, side)))
  return [...sides, ...different].filter((option) => !blockers.some((blocker) => crosses(option, blocker)))
}

/** Whether a straight pathway is the same ground as a pathway along one upright side. */
function coveredBy(straight: Pathway, side: Pathway): boolean {
  const [figure] = side.figures
  if (figure === undefined || side.figures.length > 1) return false
  const [xs, ys] = [figure.map((point) => point.xFt), figure.map((point) => point.yFt)]
  const upright = figure.every((point) => Math.min(point.xFt - Math.min(...xs), Math.max(...xs) - point.xFt) < 1e-9)
  const within = (straight.figures[0] ?? []).every(
    (point) =>
      point.xFt > Math.min(...xs) - TOLERANCE_FT &&
      point.xFt < Math.max(...xs) + TOLERANCE_FT &&
      point.yFt > Math.min(...ys) - TOLERANCE_FT &&
      point.yFt < Math.max(...ys) + TOLERANCE_FT,
  )
  return upright && within
}

/** All choices of a number of pathways that do not overlap each other, in the order of the options. */
export function pathwayChoices(options: readonly Pathway[], count: number): Pathway[][] {
  if (count === 0) return [[]]
  return options.flatMap((option, index) => {
    const others = options.slice(index + 1).filter((other) => !other.figures.some((figure) => crosses(option, figure)))
    return pathwayChoices(others, count - 1).map((rest) => [option, ...rest])
  })
}

/** The first choice of a number of pathways that do not overlap each other, or undefined. */
export function firstPathways(options: readonly Pathway[], count: number): Pathway[] | undefined {
  if (count === 0) return []
  for (const [index, option] of options.entries()) {
    const others = options.slice(index + 1).filter((other) => !other.figures.some((figure) => crosses(option, figure)))
    const rest = firstPathways(others, count - 1)
    if (rest !== undefined) return [option, ...rest]
  }
  return undefined
}

function crosses(pathway: Pathway, figure: readonly Point[]): boolean {
  return pathway.figures.some((own) => convexOverlap(own, figure))
}

/** Along every side edge that runs down (left) or up (right) the slope, corners being counter-clockwise. */
function sidePathway(surface: RoofSurface, side: 'left' | 'right', widthFt: Feet): Pathway | undefined {
  const edges = surface.edges.filter((edge) => {
    const rise = edge.to.yFt - edge.from.yFt
    return edge.kind !== 'eave' && edge.kind !== 'ridge' && (side === 'left' ? rise : -rise) < -TOLERANCE_FT
  })
  if (edges.length === 0) return undefined
  return { kind: side, widthFt, figures: edges.map((edge) => segmentStrip(edge, widthFt)) }
}

function straightStarts(surface: RoofSurface, blockers: readonly (readonly Point[])[], widthFt: Feet): number[] {
  const starts = [...surface.corners, ...blockers.flat()].flatMap(({ xFt }) => [xFt, xFt - widthFt])
  const sorted = starts.toSorted((a, b) => a - b)
  return sorted.filter((xFt, index) => index === 0 || xFt - (sorted[index - 1] ?? 0) > TOLERANCE_FT)
}

/** The strip from x to x + width, when it starts at eaves only, ends at a ridge or wall only, and no edge lies between. */
function straightPathway(surface: RoofSurface, xFt: number, widthFt: Feet): Pathway | undefined {
  let [atEave, atTop, low, high] = [0, 0, Infinity, -Infinity]
  for (const { kind, from, to } of surface.edges) {
    const overlap = Math.min(xFt + widthFt, Math.max(from.xFt, to.xFt)) - Math.max(xFt, Math.min(from.xFt, to.xFt))
    if (overlap < TOLERANCE_FT) continue
    if (to.xFt > from.xFt && kind === 'eave') atEave += overlap
    else if (to.xFt < from.xFt && (kind === 'ridge' || kind === 'wall')) atTop += overlap
    else return undefined
    low = Math.min(low, from.yFt, to.yFt)
    high = Math.max(high, from.yFt, to.yFt)
  }
  if (Math.abs(atEave - widthFt) > 1e-6 || Math.abs(atTop - widthFt) > 1e-6) return undefined
  return { kind: 'straight', widthFt, figures: [boxCorners({ xFt, yFt: low, widthFt, heightFt: high - low })] }
}
