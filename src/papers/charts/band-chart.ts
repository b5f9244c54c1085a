import { label, line, type Primitive } from '../../drawings/index.js'
import { chartFrame } from './chart-frame.js'

export interface BandPoint {
  readonly at: number
  readonly low: number
  readonly middle: number
  readonly high: number
}

interface Wishes {
  readonly heightPt: number
  readonly sizePt: number
  readonly written: (value: number) => string
  readonly writtenAt: (at: number) => string
}

/** A line through middle values with a band from low to high, over a scale that is even in `at`. */
export function bandChart(
  points: readonly BandPoint[],
  { heightPt, sizePt, written, writtenAt }: Wishes,
): (x: number, y: number, widthPt: number) => Primitive[] {
  return (x, y, widthPt) => {
    const values = points.flatMap(({ low, high }) => [low, high])
    const frame = chartFrame({ x, y, widthPt: widthPt - 12, heightPt, sizePt, values, written })
    const [first, last] = [points[0]?.at ?? 0, points.at(-1)?.at ?? 1]
    const xOf = (at: number): number => frame.left + ((at - first) / (last - first || 1)) * (frame.right - frame.left)
    const along = (pick: (point: BandPoint) => number) =>
      points.map((point) => ({ x: xOf(point.at), y: frame.yOf(pick(point)) }))
    const every = last - first > 12 ? 5 : last - first > 6 ? 2 : 1
    const ticks = points.filter(({ at }) => (at - first) % every === 0)
    return [
      {
        kind: 'path',
        points: [...along(({ high }) => high), ...along(({ low }) => low).toReversed()],
        closed: true,
        fill: 'mist',
      },
      ...frame.scale,
      { kind: 'path', points: along(({ high }) => high), pen: 'thin', color: 'sage' },
      { kind: 'path', points: along(({ low }) => low), pen: 'thin', color: 'sage' },
      { kind: 'path', points: along(({ middle }) => middle), pen: 'heavy', color: 'pine' },
      ...ticks.flatMap(({ at }): Primitive[] => [
        line(xOf(at), frame.bottom, xOf(at), frame.bottom + 3, { pen: 'thin', color: 'grey' }),
        label(xOf(at), frame.bottom + 4, writtenAt(at), { sizePt, align: 'center' }),
      ]),
    ]
  }
}
