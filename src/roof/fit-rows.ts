import { TOLERANCE_FT, type Feet } from '../values/index.js'
import { rowCapacity, rowIntervals, type Field } from './row-intervals.js'

/** Size of the modules to fit and the distances between them, ft. */
export interface ModuleGrid {
  readonly widthFt: Feet
  readonly heightFt: Feet
  readonly gapFt: Feet
  readonly rowGapFt: Feet
  /** Rail past the first and last module of a row. */
  readonly endFt: Feet
}

/** A row that the fit found: height of its lower edge and how many modules it takes. */
export interface FittedRow {
  readonly yFt: number
  readonly capacity: number
}

/** How finely a height is sought at which a row takes one module more, ft; below the tolerance of lengths. */
const HEIGHT_STEP_FT = TOLERANCE_FT / 10

/** Distance from the bends of the outline at which the search begins, ft; above the tolerance of lengths. */
const BEND_MARGIN_FT = TOLERANCE_FT * 10

/**
 * The rows that together take the most modules, from the eave up; every row is packed by itself.
 *
 * A best set of rows can be moved down until each row rests on the row below it or on a height at which rows start to
 * take more modules; only those heights are tried, each with whole rows stacked on it.
 */
export function fitRows(field: Field, grid: ModuleGrid): FittedRow[] {
  const capacityAt = (yFt: number) => rowCapacity(rowIntervals(field, yFt, grid), grid.widthFt + grid.gapFt)
  const pitchFt = grid.heightFt + grid.rowGapFt
  const highest = Math.max(...field.corners.map((corner) => corner.yFt)) - grid.heightFt + TOLERANCE_FT
  const heights = stacked(restingHeights(field, grid, capacityAt), pitchFt, highest)
  const best: { total: number; row?: FittedRow; below: number; kept: number }[] = []
  let below = -1
  for (const [index, yFt] of heights.entries()) {
    while ((heights[below + 1] ?? Infinity) <= yFt - pitchFt + TOLERANCE_FT) below++
    const capacity = capacityAt(yFt)
    const total = capacity + (best[below]?.total ?? 0)
    const before = best[index - 1]
    const better = capacity > 0 && total > (before?.total ?? 0)
    best.push(
      better
        ? { total, row: { yFt, capacity }, below, kept: index }
        : { total: before?.total ?? 0, below, kept: before?.kept ?? -1 },
    )
  }
  const rows: FittedRow[] = []
  for (let index = best.at(-1)?.kept ?? -1; index >= 0;) {
    const choice = best[index]
    if (choice?.row === undefined) break
    rows.push(choice.row)
    index = best[choice.below]?.kept ?? -1
  }
  return rows.toReversed()
}

/** Heights at which a row, moved up, starts to take more modules. */
export function restingHeights(field: Field, grid: ModuleGrid, capacityAt: (yFt: number) => number): number[] {
  const corners = [...field.corners, ...field.keepOuts.flat()].map((corner) => corner.yFt)
  if (!field.keepOuts.some(isSlanted)) return corners
  const bends = unique([...corners, ...corners.map((yFt) => yFt - grid.heightFt)])
  const jumps: number[] = []
  for (const [index, high] of bends.entries()) {
    const low = bends[index - 1]
    if (low === undefined || high - low < 4 * BEND_MARGIN_FT) continue
    seekJumps(low + BEND_MARGIN_FT, high - BEND_MARGIN_FT, capacityAt, jumps)
  }
  return [...corners, ...jumps]
}

function seekJumps(low: number, high: number, capacityAt: (yFt: number) => number, jumps: number[]): void {
  const seek = (from: number, atFrom: number, to: number, atTo: number, depth: number): void => {
    const middle = (from + to) / 2
    if (to - from < HEIGHT_STEP_FT) {
      if (atTo > atFrom) jumps.push(to)
      return
    }
    // Near the top of the search equal ends may hide a rise and a fall; deeper down they do not.
    if (atFrom >= atTo && depth > 3) return
    const atMiddle = capacityAt(middle)
    seek(from, atFrom, middle, atMiddle, depth + 1)
    seek(middle, atMiddle, to, atTo, depth + 1)
  }
  seek(low, capacityAt(low), high, capacityAt(high), 0)
}

function isSlanted(figure: readonly { readonly xFt: number; readonly yFt: number }[]): boolean {
  return figure.some((a, index) => {
    const b = figure[(index + 1) % figure.length] ?? a
    return Math.abs(a.xFt - b.xFt) > TOLERANCE_FT && Math.abs(a.yFt - b.yFt) > TOLERANCE_FT
  })
}

function stacked(resting: readonly number[], pitchFt: Feet, highestFt: Feet): number[] {
  const heights: number[] = []
  for (const start of unique(resting)) for (let y = start; y <= highestFt; y += pitchFt) heights.push(y)
  return unique(heights)
}

function unique(values: readonly number[]): number[] {
  const sorted = values.toSorted((a, b) => a - b)
  return sorted.filter((value, index) => index === 0 || value - (sorted[index - 1] ?? 0) > 1e-9)
}
