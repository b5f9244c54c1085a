import { label, line, textWidthPt, type Primitive } from '../../drawings/index.js'
import { axisMarks } from './axis.js'

/** Where values lie on a chart. */
export interface ChartFrame {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  /** Height on paper of a value, points, y down. */
  readonly yOf: (value: number) => number
  /** Lines and numbers of the scale. */
  readonly scale: readonly Primitive[]
}

interface FrameWishes {
  readonly x: number
  readonly y: number
  readonly widthPt: number
  readonly heightPt: number
  readonly sizePt: number
  readonly values: readonly number[]
  readonly written: (value: number) => string
}

/** Room for a chart with the numbers of its scale at the left and its labels below. */
export function chartFrame({ x, y, widthPt, heightPt, sizePt, values, written }: FrameWishes): ChartFrame {
  const marks = axisMarks(values, Math.max(2, Math.floor(heightPt / (sizePt * 2.6))))
  const room = Math.max(...marks.map((mark) => textWidthPt(written(mark), sizePt))) + 8
  const [left, right] = [x + room, x + widthPt]
  const [top, bottom] = [y + sizePt * 0.7, y + heightPt - sizePt * 1.7]
  const [low = 0, high = 1] = [marks[0], marks.at(-1)]
  const yOf = (value: number): number => bottom - ((value - low) / (high - low || 1)) * (bottom - top)
  const scale = marks.flatMap((mark): Primitive[] => [
    line(left, yOf(mark), right, yOf(mark), {
      pen: mark === 0 ? 'medium' : 'hair',
      color: mark === 0 ? 'grey' : 'mid',
    }),
    label(left - 5, yOf(mark), written(mark), { sizePt, align: 'right', valign: 'middle', color: 'grey' }),
  ])
  return { left, right, top, bottom, yOf, scale }
}
