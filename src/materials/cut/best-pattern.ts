/** Number of pieces of each size that one stick gives. */
export type Pattern = readonly number[]

/** A stick and what is cut from it. */
export interface PatternUse {
  /** Index of the stock length. */
  readonly stock: number
  readonly pattern: Pattern
}

/**
 * The pattern of the highest worth that fits a capacity: a bounded knapsack, exact over whole steps.
 *
 * @param worth Worth of one piece of each size, not negative.
 */
export function bestPattern(
  sizes: readonly number[],
  most: readonly number[],
  worth: readonly number[],
  capacity: number,
): { readonly worth: number; readonly pattern: Pattern } {
  let best = new Float64Array(capacity + 1)
  const taken: Int32Array[] = []
  for (const [i, size] of sizes.entries()) {
    const next = Float64Array.from(best)
    const counts = new Int32Array(capacity + 1)
    const value = worth[i] ?? 0
    const limit = Math.min(most[i] ?? 0, Math.floor(capacity / size))
    if (value > 0)
      for (let room = size; room <= capacity; room++)
        for (let count = 1; count <= limit && count * size <= room; count++) {
          const candidate = (best[room - count * size] ?? 0) + count * value
          if (candidate > (next[room] ?? 0) + 1e-12) {
            next[room] = candidate
            counts[room] = count
          }
        }
    taken.push(counts)
    best = next
  }
  const pattern = sizes.map(() => 0)
  let room = capacity
  for (let i = sizes.length - 1; i >= 0; i--) {
    const count = taken[i]?.[room] ?? 0
    pattern[i] = count
    room -= count * (sizes[i] ?? 0)
  }
  return { worth: best[capacity] ?? 0, pattern }
}
