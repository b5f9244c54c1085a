import type { Degrees, Inches } from '../../values/index.js'
import {
  CAP_HEIGHT,
  cornersOf,
  LAYERS,
  type Color,
  type Dash,
  type LayerKey,
  type Linetype,
  type Mark,
  type XY,
} from '../model/index.js'
import { radiansOf } from '../../values/index.js'
import { cutAway, isInside, type Mask } from './cut.js'

/** From paper (points, y down) to a space of a DXF file (inches, y up). */
export interface Space {
  readonly point: (paper: XY) => XY
  /** Inches of the space for a point of paper. */
  readonly inPerPt: number
}

/** A figure in inches that becomes one entity. Without `color` it has the colour of its layer. */
export type Shape = { readonly layer: LayerKey; readonly color?: number | undefined } & (
  | {
      readonly kind: 'line'
      readonly points: readonly XY[]
      readonly closed: boolean
      readonly linetype?: Linetype | undefined
      readonly dashScale: number
    }
  | { readonly kind: 'circle'; readonly center: XY; readonly radius: Inches }
  | { readonly kind: 'fill'; readonly points: readonly XY[] }
  | { readonly kind: 'disc'; readonly center: XY; readonly radius: Inches }
  | {
      readonly kind: 'hatch'
      readonly points: readonly XY[]
      readonly angleDeg: Degrees
      readonly gapIn: Inches
      readonly cross: boolean
      /** Figures in it that stay free of its lines. */
      readonly islands: readonly (readonly XY[])[]
    }
  | {
      readonly kind: 'text'
      readonly from: XY
      readonly to: XY
      /** Height of a capital. */
      readonly heightIn: Inches
      readonly rotationDeg: Degrees
      readonly bold: boolean
      readonly text: string
    }
)

const LINETYPES: Readonly<Record<Dash, Linetype>> = {
  solid: 'CONTINUOUS',
  dashed: 'DASHED',
  hidden: 'HIDDEN',
  center: 'CENTER',
  dotted: 'DOT',
}

/** Numbers of colours that do not follow the layer. @source palette of 255 colours that CAD programs share (from memory) */
const FILLS: Readonly<Record<Exclude<Color, 'white' | 'black'>, number>> = {
  grey: 8,
  light: 254,
  mid: 253,
  red: 1,
  orange: 30,
  yellow: 2,
  pine: 96,
  sage: 103,
  mist: 254,
  clay: 34,
  sand: 51,
}
const WHITE = 255

/**
 * The shapes of a mark.
 *
 * @param masks What hides parts of it.
 * @param fills Whether greys that fill figures are drawn.
 */
export function shapesOf(mark: Mark, space: Space, masks: readonly Mask[], fills: boolean): Shape[] {
  const { layer } = mark
  switch (mark.kind) {
    case 'path':
      return [...fillOf(mark, mark.points, space, fills), ...outlineOf(mark, mark.points, mark.closed, space, masks)]
    case 'rectangle':
      return [...fillOf(mark, cornersOf(mark), space, fills), ...outlineOf(mark, cornersOf(mark), true, space, masks)]
    case 'circle': {
      const [center, radius] = [space.point(mark.center), mark.radius * space.inPerPt]
      const color = fillColor(mark.fill, fills)
      const disc: Shape[] = color === undefined ? [] : [{ kind: 'disc', layer, center, radius, ...color }]
      return [...disc, ...(mark.pen === undefined ? [] : [{ kind: 'circle', layer, center, radius } as const])]
    }
    case 'hatch': {
      const { angleDeg, gapPt, cross = false } = mark
      const points = mark.points.map(space.point)
      const islands = masks
        .filter(({ figure }) => figure.every((corner) => isInside(corner, mark.points)))
        .map(({ figure }) => figure.map(space.point))
      return [{ kind: 'hatch', layer, points, angleDeg, gapIn: gapPt * space.inPerPt, cross, islands }]
    }
    case 'text': {
      if (mark.text.trim() === '' || mark.widthPt === 0) return []
      const turn = radiansOf(-mark.rotationDeg)
      const end = { x: mark.at.x + mark.widthPt * Math.cos(turn), y: mark.at.y + mark.widthPt * Math.sin(turn) }
      return [
        {
          kind: 'text',
          layer,
          color: mark.color === 'white' ? WHITE : undefined,
          from: space.point(mark.at),
          to: space.point(end),
          heightIn: mark.sizePt * CAP_HEIGHT * space.inPerPt,
          rotationDeg: mark.rotationDeg,
          bold: mark.face === 'bold',
          text: mark.text,
        },
      ]
    }
  }
}

type Figure = Extract<Mark, { kind: 'path' | 'rectangle' }>

function fillOf({ layer, fill }: Figure, points: readonly XY[], space: Space, fills: boolean): Shape[] {
  const color = fillColor(fill, fills)
  return color === undefined ? [] : [{ kind: 'fill', layer, points: points.map(space.point), ...color }]
}

/** White is the paper: it hides, and is not drawn. */
function fillColor(fill: Color | undefined, fills: boolean): { color?: number } | undefined {
  if (fill === undefined || fill === 'white') return undefined
  if (fill === 'black') return {}
  return fills || fill === 'red' || fill === 'orange' || fill === 'yellow' ? { color: FILLS[fill] } : undefined
}

function outlineOf(
  { layer, pen, dash }: Figure,
  points: readonly XY[],
  closed: boolean,
  space: Space,
  masks: readonly Mask[],
): Shape[] {
  if (pen === undefined) return []
  const usual: Linetype = LAYERS[layer].linetype
  // Where both are broken lines, how they are broken is the layer's to say.
  const isUsual = (usual === 'CONTINUOUS') === (dash === 'solid')
  return cutAway(points, closed, masks).map((piece) => ({
    kind: 'line',
    layer,
    points: piece.points.map(space.point),
    closed: piece.closed,
    linetype: isUsual ? undefined : LINETYPES[dash],
    dashScale: space.inPerPt * 72,
  }))
}

/** The shape as seen from a place. */
export function movedBy(shape: Shape, by: XY): Shape {
  const move = ({ x, y }: XY): XY => ({ x: x - by.x, y: y - by.y })
  switch (shape.kind) {
    case 'line':
    case 'fill':
      return { ...shape, points: shape.points.map(move) }
    case 'hatch':
      return { ...shape, points: shape.points.map(move), islands: shape.islands.map((each) => each.map(move)) }
    case 'circle':
    case 'disc':
      return { ...shape, center: move(shape.center) }
    case 'text':
      return { ...shape, from: move(shape.from), to: move(shape.to) }
  }
}

/** Points that a shape reaches to. */
export function reachOf(shape: Shape): XY[] {
  switch (shape.kind) {
    case 'line':
    case 'fill':
    case 'hatch':
      return [...shape.points]
    case 'circle':
    case 'disc': {
      const { center, radius } = shape
      return [
        { x: center.x - radius, y: center.y - radius },
        { x: center.x + radius, y: center.y + radius },
      ]
    }
    case 'text': {
      const { from, to, heightIn } = shape
      const length = Math.hypot(to.x - from.x, to.y - from.y)
      const [ux, uy] = [(to.x - from.x) / length, (to.y - from.y) / length]
      const over = ({ x, y }: XY): XY => ({ x: x - uy * heightIn, y: y + ux * heightIn })
      return [from, to, over(from), over(to)]
    }
  }
}
