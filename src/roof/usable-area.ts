import { reachBetween, segmentsOf, type Feet, type Point, type SquareFeet } from '../values/index.js'

/** Slices between two neighbouring corner heights; exact for upright figures, close for slanted ones that cross. */
const SLICES = 16

/**
 * Area of a plane that no figure covers, square ft.
 *
 * @param corners Outline of the plane, ft.
 * @param figures Convex figures that stay free of modules, ft.
 */
export function usableAreaFt2(corners: readonly Point[], figures: readonly (readonly Point[])[]): SquareFeet {
  const heights = [...new Set([...corners, ...figures.flat()].map((point) => point.yFt))].sort((a, b) => a - b)
  let area = 0
  for (const [index, high] of heights.entries()) {
    const low = heights[index - 1]
    if (low === undefined) continue
    const step = (high - low) / SLICES
    for (let slice = 0; slice < SLICES; slice++)
      area += step * freeLengthFt(corners, figures, low + (slice + 0.5) * step)
  }
  return area
}

function freeLengthFt(corners: readonly Point[], figures: readonly (readonly Point[])[], yFt: number): Feet {
  const crossings = segmentsOf(corners)
    .filter(([a, b]) => a.yFt > yFt !== b.yFt > yFt)
    .map(([a, b]) => a.xFt + ((yFt - a.yFt) / (b.yFt - a.yFt)) * (b.xFt - a.xFt))
    .sort((a, b) => a - b)
  const half = 1e-6
  const covered = figures
    .flatMap((figure) => {
      const reach = reachBetween(figure, yFt - half, yFt + half)
      return reach === undefined ? [] : [reach]
    })
    .sort((a, b) => a[0] - b[0])
  let free = 0
  for (let index = 0; index + 1 < crossings.length; index += 2) {
    let cursor = crossings[index] ?? 0
    const end = crossings[index + 1] ?? 0
    for (const [from, to] of covered) {
      if (from > cursor) free += Math.max(0, Math.min(from, end) - cursor)
      cursor = Math.max(cursor, to)
    }
    free += Math.max(0, end - cursor)
  }
  return free
}
