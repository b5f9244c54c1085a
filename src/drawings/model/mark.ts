import type { XY } from './geometry.js'
import type { LayerKey } from './layers.js'
import type { Color, Dash, Pen } from './pens.js'
import type { Hatch } from './primitive.js'
import type { Tag } from './tag.js'
import type { Face } from './text-metrics.js'
import type { Degrees } from '../../values/index.js'

/** Where a mark belongs. */
interface Belongs {
  readonly layer: LayerKey
  /** Number of the drawing to scale on its sheet that it belongs to; missing for what is drawn on paper. */
  readonly view?: number
  /** What it is a part of; all marks of one whole hold the same object. */
  readonly part?: Part | undefined
  readonly tag?: Tag | undefined
  /** Its place in the order of reading. */
  readonly order?: number
}

/** A whole that several marks make: a symbol at its place, or a dimension. Points on paper. */
export type Part =
  | { readonly kind: 'symbol'; readonly name: string; readonly at: XY }
  | {
      readonly kind: 'dimension'
      readonly from: XY
      readonly to: XY
      /** Ends of the dimension line. */
      readonly lineFrom: XY
      readonly lineTo: XY
      readonly text: string
    }

interface MarkLook extends Belongs {
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
export interface HatchMark extends Hatch, Belongs {
  readonly kind: 'hatch'
  readonly points: readonly XY[]
  readonly pen: Pen
  readonly color: Color
}

/** One line of text. */
export interface TextMark extends Belongs {
  readonly kind: 'text'
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
/** A figure with its places rounded. */
export function roundedMark(mark: Mark): Mark {
  switch (mark.kind) {
    case 'path':
    case 'hatch':
      return { ...mark, points: mark.points.map(roundedPoint) }
    case 'rectangle': {
      const { x, y, width, height } = mark
      return { ...mark, x: rounded(x), y: rounded(y), width: rounded(width), height: rounded(height) }
    }
    case 'circle':
      return { ...mark, center: roundedPoint(mark.center), radius: rounded(mark.radius) }
    case 'text':
      return mark
  }
}

export const roundedPoint = ({ x, y }: XY): XY => ({ x: rounded(x), y: rounded(y) })
