import { label, line, type Color, type Primitive } from '../../drawings/index.js'
import { chartFrame } from './chart-frame.js'

interface Common {
  readonly heightPt: number
  readonly sizePt: number
  readonly written: (value: number) => string
}

export interface RangeBar {
  readonly name: string
  readonly low: number
  readonly middle: number
  readonly high: number
}

type Draw = (x: number, y: number, widthPt: number) => Primitive[]

/** A bar for each value with a line over its range. */
export function rangeBars(bars: readonly RangeBar[], { heightPt, sizePt, written }: Common): Draw {
  return (x, y, widthPt) => {
    const values = bars.flatMap(({ low, high }) => [low, high])
    const { left, right, bottom, yOf, scale } = chartFrame({ x, y, widthPt, heightPt, sizePt, values, written })
    const step = (right - left) / bars.length
    return [
      ...scale,
      ...bars.flatMap(({ name, low, middle, high }, index): Primitive[] => {
        const center = left + (index + 0.5) * step
        const whisker = step * 0.12
        return [
          bar(center - step * 0.31, step * 0.62, yOf(0), yOf(middle), 'sage'),
          line(center, yOf(low), center, yOf(high), { pen: 'medium', color: 'pine' }),
          line(center - whisker, yOf(low), center + whisker, yOf(low), { pen: 'medium', color: 'pine' }),
          line(center - whisker, yOf(high), center + whisker, yOf(high), { pen: 'medium', color: 'pine' }),
          label(center, bottom + 4, name, { sizePt, align: 'center' }),
        ]
      }),
    ]
  }
}

/** Two bars beside each other for each name. */
export function pairedBars(
  pairs: readonly { readonly name: string; readonly values: readonly [number, number] }[],
  { heightPt, sizePt, written }: Common,
): Draw {
  return (x, y, widthPt) => {
    const values = pairs.flatMap((pair) => pair.values)
    const { left, right, top, bottom, yOf, scale } = chartFrame({ x, y, widthPt, heightPt, sizePt, values, written })
    const step = (right - left) / pairs.length
    return [
      ...scale,
      ...pairs.flatMap(({ name, values: [first, second] }, index): Primitive[] => {
        const center = left + (index + 0.5) * step
        const width = step * 0.34
        return [
          bar(center - width, width, yOf(0), yOf(first), 'pine'),
          bar(center, width, yOf(0), yOf(second), 'sage'),
          label(center, Math.max(bottom, top) + 4, name, { sizePt, align: 'center' }),
        ]
      }),
    ]
  }
}

function bar(x: number, width: number, from: number, to: number, fill: Color): Primitive {
  return { kind: 'rectangle', x, y: Math.min(from, to), width, height: Math.abs(to - from), fill }
}
