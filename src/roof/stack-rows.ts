import { TOLERANCE_FT, type Feet } from '../values/index.js'

/** A kind of row: how much height it takes, and what it holds at a height. */
export interface RowKind {
  readonly orientation: 'portrait' | 'landscape'
  /** Height of a row, ft. */
  readonly heightFt: Feet
  /** Heights at which a row may rest on something, ft. */
  readonly restingFt: readonly number[]
  /** No fewer modules than a row holds with its lower edge at a height, quickly told. */
  readonly boundAt: (yFt: number) => number
  /** Most modules that a row holds with its lower edge at a height, ft. */
  readonly capacityAt: (yFt: number) => number
}

/** A row of a stack. */
export interface StackedRow {
  readonly yFt: number
  readonly orientation: 'portrait' | 'landscape'
  readonly capacity: number
}

/** Most heights that are tried; a roof with more is fitted with those that come first from the eave. */
const MOST_HEIGHTS = 1200

/** The best that fits below a height. */
interface Below {
  readonly total: number
  readonly rows: number
  readonly row?: StackedRow
  readonly from?: number
}

/**
 * The rows of one or more kinds that together hold the most modules, from the eave up; of equal ones the fewest rows.
 *
 * @param highestFt Height of the top of the plane, ft.
 * @limits Rows rest on a resting height or on rows that do.
 */
export function stackRows(kinds: readonly RowKind[], rowGapFt: Feet, highestFt: number): StackedRow[] {
  const heights = heightsOf(kinds, rowGapFt, highestFt)
  const best: Below[] = heights.map(() => ({ total: 0, rows: 0 }))
  let top: Below = { total: 0, rows: 0 }
  const isBetter = (a: Below, b: Below): boolean => a.total > b.total || (a.total === b.total && a.rows < b.rows)
  // What lower rows of a kind have reached: a higher row that cannot exceed it is not worth looking at.
  const reached = new Map<RowKind, number>()
  for (const [index, yFt] of heights.entries()) {
    const carried = best[index - 1]
    let here = best[index] ?? { total: 0, rows: 0 }
    if (carried !== undefined && !isBetter(here, carried) && carried.total > 0) here = carried
    best[index] = here
    for (const kind of kinds) {
      const { orientation, heightFt, boundAt, capacityAt } = kind
      if (yFt + heightFt > highestFt + TOLERANCE_FT) continue
      if (here.total + boundAt(yFt) <= (reached.get(kind) ?? 0)) continue
      const capacity = capacityAt(yFt)
      if (capacity === 0) continue
      const row = { yFt, orientation, capacity }
      const next: Below = { total: here.total + capacity, rows: here.rows + 1, row, from: index }
      if (isBetter(next, top)) top = next
      reached.set(kind, Math.max(next.total, reached.get(kind) ?? 0))
      const at = firstAtLeast(heights, yFt + heightFt + rowGapFt - TOLERANCE_FT)
      const held = best[at]
      if (held !== undefined && isBetter(next, held)) best[at] = next
    }
  }
  const rows: StackedRow[] = []
  for (let at: Below | undefined = top; at?.row !== undefined; at = at.from === undefined ? undefined : best[at.from]) {
    rows.push(at.row)
  }
  return rows.toReversed()
}

/** Resting heights with whole rows of all kinds stacked on them, ascending. */
function heightsOf(kinds: readonly RowKind[], rowGapFt: Feet, highestFt: number): number[] {
  const least = Math.min(...kinds.map((kind) => kind.heightFt))
  let layer = unique(kinds.flatMap((kind) => kind.restingFt))
  const all: number[] = []
  while (layer.length > 0 && all.length < MOST_HEIGHTS) {
    const kept = layer.filter((yFt) => yFt + least <= highestFt + TOLERANCE_FT)
    all.push(...kept)
    layer = unique(kept.flatMap((yFt) => kinds.map((kind) => yFt + kind.heightFt + rowGapFt)))
  }
  return unique(all)
}

function firstAtLeast(sorted: readonly number[], value: number): number {
  let [low, high] = [0, sorted.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((sorted[middle] ?? Infinity) < value) low = middle + 1
    else high = middle
  }
  return low
}

function unique(values: readonly number[]): number[] {
  const sorted = values.toSorted((a, b) => a - b)
  return sorted.filter((value, index) => index === 0 || value - (sorted[index - 1] ?? 0) > 1e-9)
}
