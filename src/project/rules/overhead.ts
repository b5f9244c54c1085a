import { showNumber } from '../words.js'
import type { Rule } from './rule.js'

/** A line hangs by its sag or down to a stated height, between supports that stand apart. */
export const checkOverhead: Rule = ({ site }, report) => {
  const { overhead_lines: lines } = site
  if (lines === undefined || lines === 'none') return
  for (const [id, line] of Object.entries(lines)) {
    const path = ['site', 'overhead_lines', id]
    if (line.sag_ft === undefined && line.lowest_ft === undefined)
      report(
        path,
        'state sag_ft, or lowest_ft, the height of its lowest place; a line is never taken as straight',
        'key',
      )
    if (line.sag_ft !== undefined && line.lowest_ft !== undefined)
      report([...path, 'lowest_ft'], 'sag_ft says how it hangs already; keep one of them', 'key')
    if (line.kind === 'line' && (line.ends_at ?? line.drip_loop_ft) !== undefined)
      report([...path, line.ends_at === undefined ? 'drip_loop_ft' : 'ends_at'], 'belongs to a service drop', 'key')
    for (const [index, point] of line.points.entries()) {
      if (line.lowest_ft !== undefined && point.height_ft < line.lowest_ft)
        report(
          [...path, 'points', String(index), 'height_ft'],
          `${showNumber(point.height_ft)} ft is below lowest_ft, ${showNumber(line.lowest_ft)} ft`,
        )
      const before = line.points[index - 1]
      if (before !== undefined && Math.hypot(point.x_ft - before.x_ft, point.y_ft - before.y_ft) < 0.1)
        report([...path, 'points', String(index)], 'this support stands where the one before it does; leave one out')
    }
  }
}
