import type { Obstruction } from '../../project/index.js'
import type { ModulePlacement } from '../../roof/index.js'
import { inchesOf, type Inches } from '../../values/index.js'

/** A straight rail under one run of modules, plane coordinates in inches. */
export interface RailLine {
  /** `<array>.<block>.row<n>.lower` or `.upper`; `.part<k>` where a wide gap splits the row. */
  readonly id: string
  readonly plane: string
  readonly array: string
  /** Rails that carry the same modules share it. */
  readonly run: string
  readonly yIn: number
  /** The other rail under the same modules. */
  readonly partnerYIn: number
  readonly startIn: Inches
  readonly endIn: Inches
  readonly modules: readonly ModulePlacement[]
}

/** Where the clamps may sit, from the corner of the module along the side that crosses the rails, in. */
export interface ClampZone {
  readonly nearestIn: Inches
  readonly farthestIn: Inches
}

/** Half the width of a rail as it is kept off obstructions, in. @source common practice, no source: rails are 1.5 to 2 in wide */
const RAIL_HALF_IN = 1

/**
 * Length of rail between two places that lies on an obstruction with its clearance, in; 0 when it passes by.
 *
 * @param yIn Height of the rail up the slope, in.
 */
export function railOnObstructionIn(o: Obstruction, yIn: number, fromIn: Inches, toIn: Inches): Inches {
  const keep = o.clearance_in ?? 0
  const [low, high] = [inchesOf(o.y_ft) - keep - RAIL_HALF_IN, inchesOf(o.y_ft + o.length_ft) + keep + RAIL_HALF_IN]
  if (yIn <= low + 1e-6 || yIn >= high - 1e-6) return 0
  return Math.max(0, Math.min(toIn, inchesOf(o.x_ft + o.width_ft) + keep) - Math.max(fromIn, inchesOf(o.x_ft) - keep))
}

/** A gap wider than this ends a rail, in. */
const RUN_GAP_IN = 12

/** Overhang that balances sagging and hogging of a module on two lines. @source statics of a beam with two equal overhangs, 0.207 L */
const BALANCED_SHARE = 0.207

/**
 * Distance of the rails from the lower and upper edge of the module, in: the statically best place inside the clamp zone.
 *
 * @param heightIn Size of the module up the slope, in.
 */
export function railInsetIn(heightIn: Inches, zone: ClampZone): Inches {
  return Math.min(Math.max(BALANCED_SHARE * heightIn, zone.nearestIn), Math.min(zone.farthestIn, heightIn / 2 - 1))
}

/**
 * Two rails along the eave under every run of modules; a wide gap or an obstruction between two modules ends both.
 *
 * @param endAllowanceIn Rail past the frame of the last module, in.
 */
export function railLines(
  modules: readonly ModulePlacement[],
  clampZoneOf: (module: ModulePlacement) => ClampZone,
  endAllowanceIn: Inches,
  obstructions: readonly Obstruction[],
): RailLine[] {
  const lines: RailLine[] = []
  const heights = (module: ModulePlacement): readonly [lower: number, upper: number] => {
    const inset = railInsetIn(inchesOf(module.heightFt), clampZoneOf(module))
    return [inchesOf(module.yFt) + inset, inchesOf(module.yFt + module.heightFt) - inset]
  }
  const isBlocked = (left: ModulePlacement, right: ModulePlacement): boolean => {
    const [from, to] = [inchesOf(left.xFt + left.widthFt), inchesOf(right.xFt)]
    return obstructions.some((o) => heights(left).some((yIn) => railOnObstructionIn(o, yIn, from, to) > 1e-6))
  }
  for (const [run, members] of runsOf(modules, isBlocked)) {
    const [first, last] = [members[0], members.at(-1)]
    if (first === undefined || last === undefined) continue
    const [lower, upper] = heights(first)
    const shared = {
      plane: first.roofPlane,
      array: first.array,
      run,
      startIn: inchesOf(first.xFt) - endAllowanceIn,
      endIn: inchesOf(last.xFt + last.widthFt) + endAllowanceIn,
      modules: members,
    }
    lines.push({ ...shared, id: `${run}.lower`, yIn: lower, partnerYIn: upper })
    lines.push({ ...shared, id: `${run}.upper`, yIn: upper, partnerYIn: lower })
  }
  return lines
}

/** Modules of one row without a wide gap or an obstruction between them, from left to right. */
function runsOf(
  modules: readonly ModulePlacement[],
  isBlocked: (left: ModulePlacement, right: ModulePlacement) => boolean,
): Map<string, ModulePlacement[]> {
  const rows = new Map<string, ModulePlacement[]>()
  for (const m of modules) {
    const key = `${m.array}.${m.block}.row${m.row}`
    rows.set(key, [...(rows.get(key) ?? []), m])
  }
  const runs = new Map<string, ModulePlacement[]>()
  for (const [row, members] of rows) {
    const ordered = members.toSorted((a, b) => a.xFt - b.xFt)
    let number = 0
    let previous: ModulePlacement | undefined
    for (const module of ordered) {
      const gap = previous === undefined ? Infinity : inchesOf(module.xFt - previous.xFt - previous.widthFt)
      if (gap > RUN_GAP_IN || (previous !== undefined && isBlocked(previous, module))) number += 1
      const key = number === 1 ? row : `${row}.part${number}`
      runs.set(key, [...(runs.get(key) ?? []), module])
      previous = module
    }
  }
  return runs
}
