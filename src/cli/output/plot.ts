import { type Axis, cleanLine, columnTitle, formatNumber, type Series } from '../../report/index.js'
import type { Style } from './style.js'

const HEIGHT = 12
const WIDEST = 72
const MARKS = '*o+x#@'

interface Range {
  readonly low: number
  readonly high: number
}

/**
 * A line plot of characters: y upwards with labels at top, middle and bottom, x labels at both ends, a mark a series,
 * and between two points the straight line.
 */
export function plotXY(x: Axis, y: Axis, series: readonly Series[], style: Style): string[] {
  const points = series.flatMap((one) => one.points)
  if (points.length === 0) throw new Error('a plot has no points')
  if (series.length > MARKS.length) throw new Error(`a plot has ${series.length} series, ${MARKS.length} is the most`)
  const xRange = rangeOf(points.map((point) => point[0]))
  const yRange = rangeOf(points.map((point) => point[1]))
  const labels = [yRange.high, (yRange.high + yRange.low) / 2, yRange.low].map((value) =>
    formatNumber(value, y.decimals),
  )
  const margin = Math.max(...labels.map((label) => label.length))
  const width = Math.min(WIDEST, style.width - margin - 3)
  const canvas = Array.from({ length: HEIGHT }, () => Array.from({ length: width }, () => ' '))
  for (const [index, one] of series.entries()) draw(canvas, one, MARKS[index] ?? '*', xRange, yRange)

  const labelAt = new Map([0, Math.floor((HEIGHT - 1) / 2), HEIGHT - 1].map((row, index) => [row, labels[index] ?? '']))
  // The middle label names the value of its own row, not of the range's middle, which lies between two rows.
  labelAt.set(Math.floor((HEIGHT - 1) / 2), formatNumber(valueOfRow(Math.floor((HEIGHT - 1) / 2), yRange), y.decimals))
  const [left, right] = [xRange.low, xRange.high].map((value) => formatNumber(value, x.decimals))
  const wall = style.lines ? '│' : '|'
  return [
    cleanLine(columnTitle({ heading: y.label, ...(y.unit === undefined ? {} : { unit: y.unit }) })),
    ...canvas.map((row, index) => `${(labelAt.get(index) ?? '').padStart(margin)} ${wall}${row.join('')}`.trimEnd()),
    `${' '.repeat(margin)} ${style.lines ? '└' : '+'}${(style.lines ? '─' : '-').repeat(width)}`,
    `${' '.repeat(margin + 2)}${left ?? ''}${(right ?? '').padStart(width - (left ?? '').length)}`,
    `${' '.repeat(margin + 2)}${cleanLine(columnTitle({ heading: x.label, ...(x.unit === undefined ? {} : { unit: x.unit }) }))}`,
    ...(series.length === 1 ? [] : [series.map((one, index) => `${MARKS[index]} ${cleanLine(one.name)}`).join('   ')]),
  ]
}

function rangeOf(values: readonly number[]): Range {
  const low = Math.min(...values)
  const high = Math.max(...values)
  if (low < high) return { low, high }
  const half = Math.max(1, Math.abs(low)) / 2
  return { low: low - half, high: high + half }
}

function valueOfRow(row: number, range: Range): number {
  return range.high - (row / (HEIGHT - 1)) * (range.high - range.low)
}

function draw(canvas: string[][], series: Series, mark: string, xRange: Range, yRange: Range): void {
  const width = canvas[0]?.length ?? 0
  const columnOf = (x: number): number => Math.round(((x - xRange.low) / (xRange.high - xRange.low)) * (width - 1))
  const rowOf = (y: number): number => Math.round(((yRange.high - y) / (yRange.high - yRange.low)) * (HEIGHT - 1))
  const put = (column: number, row: number, character: string): void => {
    const line = canvas[row]
    if (line !== undefined && (character === mark || line[column] === ' ')) line[column] = character
  }
  const sorted = series.points.toSorted((a, b) => a[0] - b[0])
  for (const [index, [x1, y1]] of sorted.entries()) {
    const next = sorted[index + 1]
    if (next === undefined) continue
    for (let column = columnOf(x1) + 1; column < columnOf(next[0]); column++) {
      const share = (column - columnOf(x1)) / (columnOf(next[0]) - columnOf(x1))
      put(column, rowOf(y1 + share * (next[1] - y1)), '.')
    }
  }
  for (const [x, y] of sorted) put(columnOf(x), rowOf(y), mark)
}
