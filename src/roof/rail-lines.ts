import type { Obstruction } from '../project/index.js'
import { inchesOf, type Inches } from '../values/index.js'
import type { ModulePlacement } from './placement.js'

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
export const RAIL_HALF_IN = 1

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

/** Room for the rails on both sides of an expansion break to grow towards each other, in: 40 ft by 160 F at 13e-6 per F. */
const EXPANSION_GAP_IN = 1

/** Least gap between two modules with an expansion break of the rails between them: an end clamp on each side, in. */
export function breakGapIn(endAllowanceIn: Inches): Inches {
  return 2 * endAllowanceIn + EXPANSION_GAP_IN
}

/** A gap wider than this ends a rail, in. */
export const RUN_GAP_IN = 12

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

/** What decides where the rails of modules lie. */
export interface RailLineRules {
  /** Distance of the rails from the lower and upper edge of a module, in. */
  readonly insetInOf: (module: ModulePlacement) => Inches
  /** Rail past the frame of the last module, in. */
  readonly endAllowanceIn: Inches
  readonly obstructions: readonly Obstruction[]
  /** Longest run without an expansion break, in. */
  readonly continuousIn: Inches
}

/**
 * Two rails along the eave under every run of modules; a wide gap or an obstruction between two modules ends both, and a run
 * that is too long to be one is broken where a gap takes an end clamp on each side.
 */
export function railLines(modules: readonly ModulePlacement[], rules: RailLineRules): RailLine[] {
  const lines: RailLine[] = []
  for (const [run, members] of runsOf(modules, rules)) {
    const [first, last] = [members[0], members.at(-1)]
    if (first === undefined || last === undefined) continue
    const [lower, upper] = railHeights(first, rules)
    const shared = {
      plane: first.roofPlane,
      array: first.array,
      run,
      ...railEnds(first, last, rules),
      modules: members,
    }
    lines.push({ ...shared, id: `${run}.lower`, yIn: lower, partnerYIn: upper })
    lines.push({ ...shared, id: `${run}.upper`, yIn: upper, partnerYIn: lower })
  }
  return lines
}

function railHeights(module: ModulePlacement, rules: RailLineRules): readonly [lowerIn: number, upperIn: number] {
  const inset = rules.insetInOf(module)
  return [inchesOf(module.yFt) + inset, inchesOf(module.yFt + module.heightFt) - inset]
}

function railEnds(
  first: ModulePlacement,
  last: ModulePlacement,
  { endAllowanceIn }: RailLineRules,
): Pick<RailLine, 'startIn' | 'endIn'> {
  return { startIn: inchesOf(first.xFt) - endAllowanceIn, endIn: inchesOf(last.xFt + last.widthFt) + endAllowanceIn }
}

/** Modules of one row without a wide gap, an obstruction or an expansion break between them, from left to right. */
function runsOf(modules: readonly ModulePlacement[], rules: RailLineRules): Map<string, ModulePlacement[]> {
  const rows = new Map<string, ModulePlacement[]>()
  for (const m of modules) {
    const key = `${m.array}.${m.block}.row${m.row}`
    rows.set(key, [...(rows.get(key) ?? []), m])
  }
  const runs = new Map<string, ModulePlacement[]>()
  for (const [row, members] of rows) {
    const ordered = members.toSorted((a, b) => a.xFt - b.xFt)
    const parts = partsOf(ordered, (left, right) => gapIn(left, right) > RUN_GAP_IN || isBlocked(left, right, rules))
    for (const [index, part] of parts.flatMap((one) => brokenParts(one, rules)).entries()) {
      runs.set(index === 0 ? row : `${row}.part${index + 1}`, part)
    }
  }
  return runs
}

const gapIn = (left: ModulePlacement, right: ModulePlacement): Inches => inchesOf(right.xFt - left.xFt - left.widthFt)

function isBlocked(left: ModulePlacement, right: ModulePlacement, rules: RailLineRules): boolean {
  const [from, to] = [inchesOf(left.xFt + left.widthFt), inchesOf(right.xFt)]
  return rules.obstructions.some((o) =>
    railHeights(left, rules).some((yIn) => railOnObstructionIn(o, yIn, from, to) > 1e-6),
  )
}

/** Neighbours in lists of their own, with a new list wherever two are apart. */
function partsOf(
  ordered: readonly ModulePlacement[],
  areApart: (left: ModulePlacement, right: ModulePlacement) => boolean,
): ModulePlacement[][] {
  const parts: ModulePlacement[][] = []
  for (const module of ordered) {
    const part = parts.at(-1)
    const previous = part?.at(-1)
    if (part === undefined || previous === undefined || areApart(previous, module)) parts.push([module])
    else part.push(module)
  }
  return parts
}

/** A run with expansion breaks at its wider gaps, as few as keep each part short enough; what has no such gap stays whole. */
function brokenParts(run: readonly ModulePlacement[], rules: RailLineRules): ModulePlacement[][] {
  const pieces = partsOf(run, (left, right) => gapIn(left, right) >= breakGapIn(rules.endAllowanceIn) - 1e-6)
  const parts: ModulePlacement[][] = []
  for (const piece of pieces) {
    const part = parts.at(-1)
    const [first, last] = [part?.[0], piece.at(-1)]
    const fits = (from: ModulePlacement, to: ModulePlacement): boolean => {
      const { startIn, endIn } = railEnds(from, to, rules)
      return endIn - startIn <= rules.continuousIn + 1e-6
    }
    if (part !== undefined && first !== undefined && last !== undefined && fits(first, last)) part.push(...piece)
    else parts.push([...piece])
  }
  return parts
}
