import type { ModulePlacement } from '../roof/index.js'

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
  readonly startIn: number
  readonly endIn: number
  readonly modules: readonly ModulePlacement[]
}

/** Where the clamps may sit, from the corner of the module along the side that crosses the rails, in. */
export interface ClampZone {
  readonly nearestIn: number
  readonly farthestIn: number
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
export function railInsetIn(heightIn: number, zone: ClampZone): number {
  return Math.min(Math.max(BALANCED_SHARE * heightIn, zone.nearestIn), Math.min(zone.farthestIn, heightIn / 2 - 1))
}

/**
 * Two rails along the eave under every run of modules.
 *
 * @param endAllowanceIn Rail past the frame of the last module, in.
 */
export function railLines(
  modules: readonly ModulePlacement[],
  clampZoneOf: (module: ModulePlacement) => ClampZone,
  endAllowanceIn: number,
): RailLine[] {
  const lines: RailLine[] = []
  for (const [run, members] of runsOf(modules)) {
    const [first, last] = [members[0], members.at(-1)]
    if (first === undefined || last === undefined) continue
    const inset = railInsetIn(first.heightFt * 12, clampZoneOf(first))
    const [lower, upper] = [first.yFt * 12 + inset, (first.yFt + first.heightFt) * 12 - inset]
    const shared = {
      plane: first.roofPlane,
      array: first.array,
      run,
      startIn: first.xFt * 12 - endAllowanceIn,
      endIn: (last.xFt + last.widthFt) * 12 + endAllowanceIn,
      modules: members,
    }
    lines.push({ ...shared, id: `${run}.lower`, yIn: lower, partnerYIn: upper })
    lines.push({ ...shared, id: `${run}.upper`, yIn: upper, partnerYIn: lower })
  }
  return lines
}

/** Modules of one row without a wide gap between them, from left to right. */
function runsOf(modules: readonly ModulePlacement[]): Map<string, ModulePlacement[]> {
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
      const gap = previous === undefined ? Infinity : (module.xFt - previous.xFt - previous.widthFt) * 12
      if (gap > RUN_GAP_IN) number += 1
      const key = number === 1 ? row : `${row}.part${number}`
      runs.set(key, [...(runs.get(key) ?? []), module])
      previous = module
    }
  }
  return runs
}
