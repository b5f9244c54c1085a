import type { ModulePlacement } from '../../roof/index.js'
import type { Feet } from '../../values/index.js'
import { xy, type Box } from '../model/index.js'
import { isWithin } from './plan-region.js'

/** A part of a roof plan that is drawn larger. */
export interface PlanPart {
  /** `A`, `B` and so on, from the left to the right, from the eave up. */
  readonly letter: string
  /** In feet along the plane, y up. */
  readonly region: Box
}

/** Half of the least gap in which a plan may be cut, ft. */
const HALF_GAP_FT = 0.02

/**
 * Cuts a plane into parts of at most a size, between modules where it can; those without modules are left out.
 *
 * @param plane The upright box round its outline, ft.
 */
export function planParts(
  plane: Box,
  modules: readonly ModulePlacement[],
  most: { readonly widthFt: Feet; readonly heightFt: Feet },
): PlanPart[] {
  const xs = cuts(
    plane.x,
    plane.width,
    most.widthFt,
    modules.map(({ xFt, widthFt }) => [xFt, xFt + widthFt]),
  )
  const ys = cuts(
    plane.y,
    plane.height,
    most.heightFt,
    modules.map(({ yFt, heightFt }) => [yFt, yFt + heightFt]),
  )
  const between = (all: readonly number[]) => all.slice(1).map((to, index) => [all[index] ?? to, to] as const)
  return between(ys)
    .flatMap(([low, high]) => between(xs).map(([left, right]) => box(left, low, right, high)))
    .filter((region) => partModules(modules, region).length > 0)
    .map((region, index) => ({ letter: String.fromCodePoint(65 + index), region }))
}

/** Modules whose middle lies in a part. */
export function partModules(modules: readonly ModulePlacement[], region: Box): ModulePlacement[] {
  return modules.filter(({ xFt, yFt, widthFt, heightFt }) =>
    isWithin(xy(xFt + widthFt / 2, yFt + heightFt / 2), region),
  )
}

const box = (x: number, y: number, right: number, high: number): Box => ({ x, y, width: right - x, height: high - y })

/** Places at which a length is cut into equal pieces, moved into gaps between modules as far as no piece grows too long. */
function cuts(start: Feet, length: Feet, most: Feet, spans: readonly (readonly [number, number])[]): number[] {
  const count = Math.ceil(length / most - 1e-9)
  const free = (most - length / count) / 2
  const gaps = spans
    .flatMap(([from, to]) => [from - HALF_GAP_FT, to + HALF_GAP_FT])
    .filter((at) => spans.every(([from, to]) => at <= from || at >= to))
  return Array.from({ length: count + 1 }, (_, index) => {
    const even = start + (index / count) * length
    if (index === 0 || index === count) return even
    const [nearest = even] = gaps.toSorted((a, b) => Math.abs(a - even) - Math.abs(b - even))
    return Math.abs(nearest - even) <= free ? nearest : even
  })
}
