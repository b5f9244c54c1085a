import { moduleCentresFt, rowsOf, type ModulePlacement } from '../../roof/index.js'

/**
 * Way of a trunk cable past the modules of each array: along the lowest row, back along the next, and so on.
 *
 * @param modules All placed modules.
 * @returns By array id, the way to each module from the one before it, ft, along rows and slope; the first module counts
 *   half its width, from a junction box at its edge.
 */
export function trunkGapsFt(modules: readonly ModulePlacement[]): Record<string, number[]> {
  const gaps: Record<string, number[]> = {}
  const ordered = new Map<string, ModulePlacement[]>()
  rowsOf(modules).forEach((row) => {
    const way = ordered.get(row.array) ?? []
    const last = way.at(-1)
    const first = row.modules[0]
    // Begin each row at the end that is nearer to where the row before ended.
    const backwards =
      last !== undefined &&
      first !== undefined &&
      Math.abs((row.modules.at(-1) ?? first).xFt - last.xFt) < Math.abs(first.xFt - last.xFt)
    way.push(...(backwards ? row.modules.toReversed() : row.modules))
    ordered.set(row.array, way)
  })
  for (const [array, way] of ordered) {
    const centres = moduleCentresFt(way)
    gaps[array] = centres.map((centre, index) => {
      const before = centres[index - 1]
      if (before === undefined) return (way[0]?.widthFt ?? 0) / 2
      return Math.abs(centre.xFt - before.xFt) + Math.abs(centre.yFt - before.yFt)
    })
  }
  return gaps
}
