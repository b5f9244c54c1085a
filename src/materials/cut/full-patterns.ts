import type { Pattern } from './best-pattern.js'

/** A pattern and the steps of the stick that it takes. */
export interface FullPattern {
  readonly pattern: Pattern
  readonly used: number
}

/**
 * Every pattern that holds the longest remaining piece and has no room for one more; others are never better, because
 * a piece from another stick could be moved into the room.
 */
export function* fullPatterns(
  sizes: readonly number[],
  left: readonly number[],
  capacity: number,
): Generator<FullPattern> {
  const first = left.findIndex((count) => count > 0)
  const size = sizes[first]
  if (size === undefined || size > capacity) return
  const pattern = sizes.map(() => 0)

  function* fill(i: number, room: number): Generator<FullPattern> {
    const here = sizes[i]
    if (here === undefined) {
      const isFull = sizes.every((each, j) => each > room || (pattern[j] ?? 0) === (left[j] ?? 0))
      if (isFull) yield { pattern: [...pattern], used: capacity - room }
      return
    }
    const least = i === first ? 1 : 0
    for (let count = Math.min(left[i] ?? 0, Math.floor(room / here)); count >= least; count--) {
      pattern[i] = count
      yield* fill(i + 1, room - count * here)
    }
    pattern[i] = 0
  }

  yield* fill(first, capacity)
}
