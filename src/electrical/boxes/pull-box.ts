import {
  conductorSizes,
  coverDistances,
  PULL_BOX_FACTORS,
  type ConductorSize,
  type TradeSize,
} from '../../tables/nec/index.js'
import type { Inches } from '../../values/index.js'

/** A trade size as a number: `1-1/4` is 1.25. */
export function tradeSizeIn(size: TradeSize): Inches {
  return size
    .split('-')
    .map((part) => {
      const [over = '0', under = '1'] = part.split('/')
      return Number(over) / Number(under)
    })
    .reduce((sum, part) => sum + part, 0)
}

/**
 * Least inside distance from the wall of a raceway to the opposite wall.
 *
 * @param largest Largest raceway of the row.
 * @param others The other raceways of the same row; they count only for angles and splices.
 * @source NEC 314.28(A)(1), (2)
 */
export function leastPullIn(
  pull: keyof typeof PULL_BOX_FACTORS,
  largest: TradeSize,
  others: readonly TradeSize[],
): Inches {
  const sizes = [largest, ...others].map(tradeSizeIn).toSorted((a, b) => b - a)
  const [first = 0, ...rest] = sizes
  const least = PULL_BOX_FACTORS[pull] * first
  return pull === 'straight' ? least : least + rest.reduce((sum, size) => sum + size, 0)
}

/** Least distance between the raceway entries that hold the same conductors. @source NEC 314.28(A)(2) */
export const leastEntryDistanceIn = (largest: TradeSize): Inches => PULL_BOX_FACTORS.angle * tradeSizeIn(largest)

/**
 * Least distance from a raceway entry to the removable cover opposite.
 *
 * @returns undefined above the sizes that were read.
 * @source NEC Table 312.6(A)
 */
export function leastCoverDistanceIn(largest: ConductorSize): Inches | undefined {
  const rank = conductorSizes.indexOf(largest)
  return coverDistances.find(({ toSize }) => rank <= conductorSizes.indexOf(toSize))?.distanceIn
}
