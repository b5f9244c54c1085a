/**
 * Cycles of a varying series by the rainflow count of ASTM E1049: ranges, each counted once or half.
 *
 * @returns Ranges in the unit of the series; those of zero are left out.
 */
export function rainflow(series: ArrayLike<number>): { readonly range: number; readonly count: number }[] {
  const cycles: { range: number; count: number }[] = []
  const stack: number[] = []
  const add = (range: number, count: number): void => {
    if (range > 0) cycles.push({ range, count })
  }
  for (const point of turningPoints(series)) {
    stack.push(point)
    while (stack.length >= 3) {
      const n = stack.length
      const last = Math.abs(stack[n - 1]! - stack[n - 2]!)
      const before = Math.abs(stack[n - 2]! - stack[n - 3]!)
      if (last < before) break
      if (n === 3) {
        // The earlier range holds the start of the series.
        add(before, 0.5)
        stack.shift()
      } else {
        add(before, 1)
        stack.splice(n - 3, 2)
      }
    }
  }
  for (let i = 1; i < stack.length; i++) add(Math.abs(stack[i]! - stack[i - 1]!), 0.5)
  return cycles
}

/** First and last value, and those between at which the series turns. */
function turningPoints(series: ArrayLike<number>): number[] {
  const points: number[] = []
  for (let i = 0; i < series.length; i++) {
    const value = series[i]!
    const n = points.length
    if (n > 0 && value === points[n - 1]) continue
    if (n > 1 && points[n - 1]! - points[n - 2]! > 0 === value - points[n - 1]! > 0) points[n - 1] = value
    else points.push(value)
  }
  return points
}
