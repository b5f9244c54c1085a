import type { Feet } from '../../values/index.js'

/** A part of a circuit with its factor (correction times adjustment). */
export interface CircuitPart {
  readonly lengthFt: Feet
  readonly factor: number
}

/**
 * Index of the neighbour whose higher ampacity a part may use, or undefined.
 *
 * The lower part may be no longer than 10 ft and 10 percent of the part with the higher ampacity. With two such
 * neighbours the less favourable one counts.
 *
 * @source NEC 310.15(A)(2) exception (to 2017), 310.14(A)(2) exception (2020, 2023)
 */
export function tenFootNeighbour(parts: readonly CircuitPart[], at: number): number | undefined {
  const here = parts[at]
  if (here === undefined) return undefined
  return [at - 1, at + 1]
    .filter((i) => {
      const there = parts[i]
      return there !== undefined && there.factor > here.factor && here.lengthFt <= Math.min(10, there.lengthFt / 10)
    })
    .toSorted((a, b) => (parts[a]?.factor ?? 0) - (parts[b]?.factor ?? 0))[0]
}
