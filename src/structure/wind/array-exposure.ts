import type { ModulePlacement } from '../../roof/index.js'
import { EXPOSED_EDGE_RULES } from '../../tables/asce7/index.js'
import type { PlaneGeometry, PlanePoint } from '../model/index.js'
import type { Feet } from '../../values/index.js'

/** Part of the plane where modules take the array edge factor, ft. */
export interface ExposedStrip {
  readonly module: string
  readonly side: Side
  readonly fromXFt: number
  readonly toXFt: number
  readonly fromYFt: number
  readonly toYFt: number
}

type Side = 'left' | 'right' | 'lower' | 'upper'

/** What decides whether an array edge is exposed. */
export interface ExposureInput {
  readonly edition: 'ASCE 7-16' | 'ASCE 7-22'
  readonly meanRoofHeightFt: Feet
  /** h2: top of the modules above the roof, ft. */
  readonly topHeightFt: Feet
  /** Longest side of a module, ft. */
  readonly moduleLengthFt: Feet
  /** Count ridges and hips as roof edges; otherwise the roof goes on beyond them, the safe side. */
  readonly ridgeIsRoofEdge: boolean
}

const OUTWARD: Readonly<Record<Side, PlanePoint>> = {
  left: { xFt: -1, yFt: 0 },
  right: { xFt: 1, yFt: 0 },
  lower: { xFt: 0, yFt: -1 },
  upper: { xFt: 0, yFt: 1 },
}

const PROBES = [0.02, 0.25, 0.5, 0.75, 0.98]

/**
 * Strips along the exposed edges of the arrays on one plane.
 *
 * An edge counts as exposed when any part of it has neither a module nor a roof edge near enough. Distances are measured
 * along the surface, which is never shorter than in plan.
 *
 * @source ASCE 7-16 and 7-22 section 29.4.4 (secondary; the 4 ft of 7-16 from memory)
 */
export function exposedStrips(
  plane: PlaneGeometry,
  modules: readonly ModulePlacement[],
  input: ExposureInput,
): ExposedStrip[] {
  const rule = EXPOSED_EDGE_RULES[input.edition]
  const depth =
    'timesModuleLength' in rule.strip
      ? rule.strip.timesModuleLength * input.moduleLengthFt
      : rule.strip.timesTopHeight * input.topHeightFt
  const strips: ExposedStrip[] = []
  for (const module of modules) {
    for (const side of ['left', 'right', 'lower', 'upper'] as const) {
      if (!isExposed(plane, modules, { module, side }, input)) continue
      const [x0, x1, y0, y1] = [module.xFt, module.xFt + module.widthFt, module.yFt, module.yFt + module.heightFt]
      strips.push({
        module: module.id,
        side,
        fromXFt: side === 'right' ? x1 - depth : x0,
        toXFt: side === 'left' ? x0 + depth : x1,
        fromYFt: side === 'upper' ? y1 - depth : y0,
        toYFt: side === 'lower' ? y0 + depth : y1,
      })
    }
  }
  return strips
}

/** Whether a point lies in one of the strips. */
export function isInStrip(strips: readonly ExposedStrip[], point: PlanePoint): boolean {
  const { xFt, yFt } = point
  for (const s of strips) if (s.fromXFt <= xFt && xFt <= s.toXFt && s.fromYFt <= yFt && yFt <= s.toYFt) return true
  return false
}

function isExposed(
  plane: PlaneGeometry,
  modules: readonly ModulePlacement[],
  { module, side }: { readonly module: ModulePlacement; readonly side: Side },
  input: ExposureInput,
): boolean {
  const rule = EXPOSED_EDGE_RULES[input.edition]
  const neighbourFt = 'ft' in rule.neighbour ? rule.neighbour.ft : rule.neighbour.timesTopHeight * input.topHeightFt
  return PROBES.some((share) => {
    const probe = probeOf(module, side, share)
    if (neighbourDistanceFt(modules, module, probe, side) <= neighbourFt) return false
    return (
      roofEdgeDistanceFt(plane, probe, side, input.ridgeIsRoofEdge) > rule.roofEdgeOverHeight * input.meanRoofHeightFt
    )
  })
}

function probeOf(m: ModulePlacement, side: Side, share: number): PlanePoint {
  if (side === 'left' || side === 'right') {
    return { xFt: side === 'left' ? m.xFt : m.xFt + m.widthFt, yFt: m.yFt + share * m.heightFt }
  }
  return { xFt: m.xFt + share * m.widthFt, yFt: side === 'lower' ? m.yFt : m.yFt + m.heightFt }
}

function neighbourDistanceFt(
  modules: readonly ModulePlacement[],
  self: ModulePlacement,
  probe: PlanePoint,
  side: Side,
): Feet {
  let nearest = Infinity
  for (const other of modules) {
    if (other.id === self.id) continue
    const [x0, x1, y0, y1] = [other.xFt, other.xFt + other.widthFt, other.yFt, other.yFt + other.heightFt]
    const across = side === 'left' || side === 'right'
    // Gaps between modules do not expose the edge behind them.
    const slack = 0.1
    const facing = across
      ? y0 - slack <= probe.yFt && probe.yFt <= y1 + slack
      : x0 - slack <= probe.xFt && probe.xFt <= x1 + slack
    if (!facing) continue
    const gap = { left: probe.xFt - x1, right: x0 - probe.xFt, lower: probe.yFt - y1, upper: y0 - probe.yFt }[side]
    if (gap > -1e-6) nearest = Math.min(nearest, gap)
  }
  return nearest
}

function roofEdgeDistanceFt(plane: PlaneGeometry, probe: PlanePoint, side: Side, ridgeIsRoofEdge: boolean): Feet {
  const ray = OUTWARD[side]
  let nearest = Infinity
  let ends = true
  for (const edge of plane.edges) {
    const [ex, ey] = [edge.to.xFt - edge.from.xFt, edge.to.yFt - edge.from.yFt]
    const cross = ray.xFt * ey - ray.yFt * ex
    if (Math.abs(cross) < 1e-12) continue
    const [px, py] = [edge.from.xFt - probe.xFt, edge.from.yFt - probe.yFt]
    const distance = (px * ey - py * ex) / cross
    const along = (px * ray.yFt - py * ray.xFt) / cross
    if (distance < -1e-6 || along < -1e-9 || along > 1 + 1e-9 || distance >= nearest) continue
    nearest = distance
    ends = edge.kind === 'valley' ? false : edge.kind === 'ridge' || edge.kind === 'hip' ? ridgeIsRoofEdge : true
  }
  return ends ? nearest : Infinity
}
