import type { ArrangedPlane } from './arrangement.js'
import type { ModulePlacement } from './placement.js'
import { boxCorners, containsPoint, type Point } from '../values/index.js'

/** A point of the plan with the one character that shows it. */
export interface PlanMark extends Point {
  readonly character: string
}

/** Characters stand about twice as high as wide. */
const CHARACTER_ASPECT = 2

/**
 * A plan of one plane in characters, ridge at the top, for a terminal: `#` and `=` modules (neighbours differ),
 * `X` obstructions, `:` pathways and strips that stay free, `.` bare roof.
 *
 * @param plane From `arrangeModules`.
 * @param modules All modules; those of other planes are left out.
 * @param marks Things such as mounts, drawn over everything else.
 * @param columns Width of the plan in characters, at least 10.
 * @returns Lines joined by newlines, without spaces at their ends.
 */
export function textPlan(
  plane: ArrangedPlane,
  modules: readonly ModulePlacement[],
  marks: readonly PlanMark[] = [],
  columns = 78,
): string {
  const [xs, ys] = [plane.corners.map((corner) => corner.xFt), plane.corners.map((corner) => corner.yFt)]
  const [left, bottom] = [Math.min(...xs), Math.min(...ys)]
  const width = Math.max(10, Math.floor(columns))
  const cellFt = (Math.max(...xs) - left) / width
  const lineFt = cellFt * CHARACTER_ASPECT
  const lines = Math.max(1, Math.ceil((Math.max(...ys) - bottom) / lineFt - 1e-9))
  const own = modules.filter((module) => module.roofPlane === plane.id)
  const grid = Array.from({ length: lines }, (_, line) =>
    Array.from({ length: width }, (_, column) => {
      const point = { xFt: left + (column + 0.5) * cellFt, yFt: bottom + (line + 0.5) * lineFt }
      return characterAt(plane, own, point)
    }),
  )
  for (const mark of marks) {
    const line = grid[cellIndex((mark.yFt - bottom) / lineFt, lines)]
    if (line !== undefined) line[cellIndex((mark.xFt - left) / cellFt, width)] = mark.character.slice(0, 1)
  }
  return grid
    .toReversed()
    .map((line) => line.join('').trimEnd())
    .join('\n')
}

function characterAt(plane: ArrangedPlane, modules: readonly ModulePlacement[], point: Point): string {
  const module = modules.find((candidate) => containsPoint(boxCorners(candidate), point))
  if (module !== undefined) return (module.row + module.column) % 2 === 0 ? '#' : '='
  if (!containsPoint(plane.corners, point)) return ' '
  const obstruction = plane.keepOuts.find((item) => item.kind === 'obstruction' && containsPoint(item.thing, point))
  if (obstruction !== undefined) return 'X'
  const free = [...plane.keepOuts.map((item) => item.corners), ...plane.pathways.flatMap((pathway) => pathway.figures)]
  return free.some((figure) => containsPoint(figure, point)) ? ':' : '.'
}

function cellIndex(value: number, count: number): number {
  return Math.min(count - 1, Math.max(0, Math.floor(value)))
}
