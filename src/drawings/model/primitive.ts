import type { XY } from './geometry.js'
import type { Color, Dash, Pen } from './pens.js'
import type { Face } from './text-metrics.js'
import type { Degrees } from '../../values/index.js'

/** How a figure is drawn; without a pen it has no outline. */
export interface Look {
  readonly pen?: Pen | undefined
  readonly dash?: Dash | undefined
  readonly color?: Color | undefined
  readonly fill?: Color | undefined
  readonly hatch?: Hatch | undefined
}

/** Parallel lines that fill a figure. */
export interface Hatch {
  /** Direction of the lines on paper, degrees counter-clockwise from level. */
  readonly angleDeg: Degrees
  /** Distance between them on paper, points. */
  readonly gapPt: number
  readonly cross?: boolean
}

/** A line, or a polygon when closed. */
export interface PathPrimitive extends Look {
  readonly kind: 'path'
  readonly points: readonly XY[]
  readonly closed?: boolean
}

/** An upright rectangle; x and y are the least of its corners. */
export interface RectanglePrimitive extends Look {
  readonly kind: 'rectangle'
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** A circle, or an arc counter-clockwise as seen, when angles are given. */
export interface CirclePrimitive extends Look {
  readonly kind: 'circle'
  readonly center: XY
  readonly radius?: number
  /** Radius that does not scale, points; instead of `radius`. */
  readonly radiusPt?: number
  readonly fromDeg?: Degrees
  readonly toDeg?: Degrees
}

export interface TextPrimitive {
  readonly kind: 'text'
  readonly at: XY
  readonly text: string
  readonly sizePt: number
  readonly face?: Face
  readonly color?: Color
  readonly align?: 'left' | 'center' | 'right'
  /** Which part of the block of lines `at` names. */
  readonly valign?: 'top' | 'middle' | 'bottom'
  /** Counter-clockwise as seen. */
  readonly rotationDeg?: Degrees
  readonly maxWidthPt?: number
  /** Whether a white ground hides what is drawn below. */
  readonly halo?: boolean
  /** Places to try, as shifts on paper (points, y down), when `at` is taken. Without it the text stays where it is. */
  readonly shifts?: readonly XY[]
  /** Whether the text stands beside what it names with a line to it, as things that lie close together need. */
  readonly aside?: boolean
  /** Whether the text may be left out when no place is free, because it is told elsewhere on the sheet. */
  readonly optional?: boolean
}

/** A distance with extension lines and slashed ends. */
export interface DimensionPrimitive {
  readonly kind: 'dimension'
  readonly from: XY
  readonly to: XY
  /** Distance on paper from the points to the line, points; positive to the left when one walks from `from` to `to` as seen. */
  readonly offsetPt: number
  readonly text: string
  readonly sizePt?: number
  readonly optional?: boolean
  /** Places between the ends that the line marks too, without lines to them. */
  readonly between?: readonly XY[]
}

/** A note with a line that ends in a dot or an arrow. */
export interface LeaderPrimitive {
  readonly kind: 'leader'
  readonly tip: XY
  /** From the tip to the note on paper, points, y down. */
  readonly reachPt: XY
  readonly text: string
  readonly sizePt?: number
  readonly maxWidthPt?: number
  readonly end?: 'dot' | 'arrow'
}

/** Everything that can stand on a sheet; both renderers know no more than the marks that these become. */
export type Primitive =
  | PathPrimitive
  | RectanglePrimitive
  | CirclePrimitive
  | TextPrimitive
  | DimensionPrimitive
  | LeaderPrimitive
