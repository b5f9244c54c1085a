import type { ConductorSize } from './conductor-sizes.js'

/**
 * Least distance from a raceway entry to the removable cover opposite, in, by the largest conductor: up to `toSize`.
 *
 * @source NEC 314.28(A)(2) exception, Table 312.6(A), one wire at a terminal (2017 and 2023 read).
 */
export const coverDistances: readonly { readonly toSize: ConductorSize; readonly distanceIn: number }[] = [
  { toSize: '6', distanceIn: 1.5 },
  { toSize: '3', distanceIn: 2 },
  { toSize: '2', distanceIn: 2.5 },
  { toSize: '1', distanceIn: 3 },
  { toSize: '2/0', distanceIn: 3.5 },
  { toSize: '4/0', distanceIn: 4 },
  { toSize: '250 kcmil', distanceIn: 4.5 },
]
