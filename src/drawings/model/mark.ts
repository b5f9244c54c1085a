import type { XY } from './geometry.js'
import type { LayerKey } from './layers.js'
import type { Color, Dash, Pen } from './pens.js'
import type { Hatch } from './primitive.js'
import type { Face } from './text-metrics.js'
import type { Degrees } from '../../values/index.js'

interface MarkLook {
  readonly layer: LayerKey
  readonly pen?: Pen | undefined
  readonly dash: Dash
  readonly color: Color
  readonly fill?: Color | undefined
}

/** What the renderers draw: points from the upper left corner of the paper, y down, rounded to thousandths. */
export type Mark =
  | (MarkLook & { readonly kind: 'path'; readonly points: readonly XY[]; readonly closed: boolean })
  | (MarkLook & {
      readonly kind: 'rectangle'
      readonly x: number
      readonly y: number
      readonly width: number
      readonly height: number
    })
  | (MarkLook & { readonly kind: 'circle'; readonly center: XY; readonly radius: number })
  | HatchMark
  | TextMark

/** Parallel lines that fill a polygon. */
export interface HatchMark extends Hatch {
  readonly kind: 'hatch'
  readonly layer: LayerKey
  readonly points: readonly XY[]
  readonly pen: Pen
  readonly color: Color
}

/** One line of text. */
export interface TextMark {
  readonly kind: 'text'
  readonly layer: LayerKey
  readonly text: string
  /** Left end of the baseline. */
  readonly at: XY
  readonly widthPt: number
  readonly sizePt: number
  readonly face: Face
  readonly color: Color
  /** Counter-clockwise as seen. */
  readonly rotationDeg: Degrees
  readonly halo: boolean
  /** Lines of one block share a number; they cannot collide. */
  readonly block: number
}

/** A sheet that is ready to draw. */
export interface FlatSheet {
  /** In the order of drawing: figures first, then texts, so that no line runs over a text. */
  readonly marks: readonly Mark[]
  /** Texts that found no free place and are not told elsewhere. */
  readonly collisions: readonly string[]
}

export const rounded = (value: number): number => Math.round(value * 1000) / 1000 + 0
export const roundedPoint = ({ x, y }: XY): XY => ({ x: rounded(x), y: rounded(y) })
