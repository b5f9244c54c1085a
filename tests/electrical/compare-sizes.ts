import { conductorSizes } from '../../src/tables/nec/index.js'

/**
 * Compares two conductor sizes by their names in the results.
 *
 * @returns Below 0 when `a` is smaller, 0 when equal, above 0 when larger.
 */
export function compareSizes(a: string, b: string): number {
  const rank = (size: string): number => (conductorSizes as readonly string[]).indexOf(size)
  return rank(a) - rank(b)
}
