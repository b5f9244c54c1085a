import type { OverheadLine } from '../../project/index.js'
import type { Point as SpacePoint } from '../../sun/index.js'
import { roofClearance as RULE } from '../../tables/nec/index.js'
import { containsPoint, segmentsOf, type Feet, type Point } from '../../values/index.js'
import type { HangingLine } from './span.js'
import { surfaceHeightFt, type Surface } from './surfaces.js'

/** Least plumb height of a line over a surface and 3 ft round it. */
export interface Clearance {
  readonly clearanceFt: Feet
  /** By how much the true value can be less, ft. */
  readonly errorFt: Feet
  readonly requiredFt: Feet
  /** Part of 230.24. */
  readonly part: string
}

/** Heights a line over a surface; undefined where it passes more than 3 ft beside it. */
export function clearanceOver(line: OverheadLine, hanging: HangingLine, surface: Surface): Clearance | undefined {
  const rule = ruleOf(line, hanging, surface)
  const beyondFt = RULE.beyondEdgeFt + hanging.levelStepFt / 2
  const toWall = line.ends_at === 'wall' && line.kind === 'service_drop' && endsAt(hanging, surface)
  const spared = toWall ? hanging.spans.length - 1 : undefined
  let least = Infinity
  for (const [index, places] of hanging.spans.entries()) {
    for (const place of places) {
      const at: Point = { xFt: place.east, yFt: place.north }
      for (const { figure, sheet } of surface.parts) {
        if (containsPoint(figure, at)) {
          const aboveFt = place.up - surfaceHeightFt(sheet, at)
          // A span to a wall ends below the overhang; where it passes through the roof the places above it tell.
          if (aboveFt >= 0 || index !== spared) least = Math.min(least, aboveFt)
        } else if (index !== spared) {
          // The level of the roof beyond its edge is taken at every place of the edge that is near enough: the highest.
          const level = highestEdge(figure, at, beyondFt, (point) => surfaceHeightFt(sheet, point))
          if (level !== undefined) least = Math.min(least, place.up - level)
        }
      }
    }
  }
  if (least === Infinity) return undefined
  return { clearanceFt: least, errorFt: (hanging.levelStepFt / 2) * (hanging.steepest + surface.steepest), ...rule }
}

/** Whether the wall on which a line ends is below a surface: the roof of another building is not spared. */
function endsAt(hanging: HangingLine, { parts }: Surface): boolean {
  const end = hanging.spans.at(-1)?.at(-1)
  if (end === undefined) return false
  const at: Point = { xFt: end.east, yFt: end.north }
  return parts.some(
    ({ figure }) => containsPoint(figure, at) || highestEdge(figure, at, RULE.beyondEdgeFt, () => 0) !== undefined,
  )
}

/** Highest level of the edges of a figure within a distance of a place. */
function highestEdge(
  figure: readonly Point[],
  at: Point,
  withinFt: Feet,
  heightOf: (point: Point) => Feet,
): Feet | undefined {
  let highest: number | undefined
  for (const [a, b] of segmentsOf(figure)) {
    const [dx, dy] = [b.xFt - a.xFt, b.yFt - a.yFt]
    const length = Math.hypot(dx, dy)
    if (length === 0) continue
    const foot = ((at.xFt - a.xFt) * dx + (at.yFt - a.yFt) * dy) / length
    const off = ((at.xFt - a.xFt) * dy - (at.yFt - a.yFt) * dx) / length
    if (Math.abs(off) > withinFt) continue
    const half = Math.sqrt(withinFt * withinFt - off * off)
    const [from, to] = [Math.max(0, foot - half), Math.min(length, foot + half)]
    if (from > to) continue
    for (const along of [from, to]) {
      const height = heightOf({ xFt: a.xFt + (dx * along) / length, yFt: a.yFt + (dy * along) / length })
      if (highest === undefined || height > highest) highest = height
    }
  }
  return highest
}

function ruleOf(line: OverheadLine, hanging: HangingLine, surface: Surface): Pick<Clearance, 'requiredFt' | 'part'> {
  const drop = line.kind === 'service_drop'
  const { overhang, steep } = RULE
  if (drop && surface.kind === 'roof' && line.ends_at === 'overhang_mast' && line.between_v <= overhang.upToBetweenV) {
    if (isShortOver(hanging, surface)) return { requiredFt: overhang.leastFt, part: overhang.part }
  }
  if (drop && line.between_v <= steep.upToBetweenV && surface.pitchIn12 >= steep.fromIn12 - 1e-9)
    return { requiredFt: steep.leastFt, part: steep.part }
  return { requiredFt: RULE.leastFt, part: '(A)' }
}

/** Whether no more than 6 ft of conductor pass over the roof, over no more than 4 ft of it, and end there. */
function isShortOver(hanging: HangingLine, surface: Surface): boolean {
  const figure = surface.parts[0]?.figure ?? []
  const isOver = ({ east, north }: SpacePoint): boolean => containsPoint(figure, { xFt: east, yFt: north })
  const last = hanging.spans.at(-1) ?? []
  const end = last.at(-1)
  if (end === undefined || !isOver(end)) return false
  if (hanging.spans.slice(0, -1).some((span) => span.some(isOver))) return false
  const over = last.filter(isOver)
  const [first, final] = [over[0], over.at(-1)]
  if (first === undefined || final === undefined) return false
  const { conductorFt, levelFt } = RULE.overhang
  const level = Math.hypot(final.east - first.east, final.north - first.north)
  const along = over.slice(1).reduce((sum, to, index) => {
    const from = over[index]!
    return sum + Math.hypot(to.east - from.east, to.north - from.north, to.up - from.up)
  }, 0)
  // What lies between the edge and the first place over the roof counts too.
  return along + hanging.stepFt <= conductorFt + 1e-9 && level + hanging.levelStepFt <= levelFt + 1e-9
}
