import type { XY } from './geometry.js'
import type { LayerKey } from './layers.js'
import { layerOf } from './on-layer.js'
import type { Mark, Part } from './mark.js'
import type {
  CirclePrimitive,
  DimensionPrimitive,
  LeaderPrimitive,
  Look,
  Primitive,
  TextPrimitive,
} from './primitive.js'
import { textWidthPt } from './text-metrics.js'
import { degreesOf, radiansOf } from '../../values/index.js'

/** From the units of a primitive to paper. */
export interface Placing {
  readonly point: (point: XY) => XY
  readonly scale: number
  /** Whether y goes up before the change. */
  readonly yUp: boolean
}

/** A text with its place on paper. */
export interface PlacedText {
  readonly text: TextPrimitive
  readonly at: XY
}

const NOTE_PT = 7

/** A look on its layer. */
type Inked = Look & { readonly layer: LayerKey }

/** Marks and texts of a primitive, and what they make together. */
export interface Expanded {
  readonly marks: readonly Mark[]
  readonly texts: readonly PlacedText[]
  readonly part?: Part
}

/** Turns a primitive into marks and texts on paper, not rounded. */
export function expand(primitive: Primitive, placing: Placing): Expanded {
  switch (primitive.kind) {
    case 'path':
      return {
        marks: figureMarks(primitive.points.map(placing.point), primitive.closed === true, inked(primitive)),
        texts: [],
      }
    case 'rectangle':
      return { marks: rectangleMarks(primitive, placing), texts: [] }
    case 'circle':
      return { marks: circleMarks(primitive, placing), texts: [] }
    case 'text':
      return { marks: [], texts: [{ text: primitive, at: placing.point(primitive.at) }] }
    case 'dimension':
      return expandDimension(primitive, placing)
    case 'leader':
      return expandLeader(primitive, placing)
  }
}

function inked<P extends Primitive>(primitive: P): P & { layer: LayerKey } {
  return { ...primitive, layer: layerOf(primitive) }
}

function lookOf(look: Inked): Pick<Mark & { kind: 'path' }, 'layer' | 'pen' | 'dash' | 'color' | 'fill'> {
  return { layer: look.layer, pen: look.pen, dash: look.dash ?? 'solid', color: look.color ?? 'black', fill: look.fill }
}

function stroke(points: readonly XY[], layer: LayerKey, pen: Look['pen'] = 'thin'): Mark {
  return { kind: 'path', layer, points, closed: false, pen, dash: 'solid', color: 'black' }
}

function figureMarks(points: readonly XY[], closed: boolean, look: Inked): Mark[] {
  const { layer, hatch } = look
  const outline: Mark = { kind: 'path', points, closed, ...lookOf(look) }
  if (hatch === undefined) return [outline]
  const ground: Mark[] =
    look.fill === undefined ? [] : [{ kind: 'path', points, closed, ...lookOf({ layer, fill: look.fill }) }]
  const lines: Mark = { kind: 'hatch', layer, points, ...hatch, pen: 'hair', color: 'grey' }
  return [...ground, lines, ...(look.pen === undefined ? [] : [{ ...outline, fill: undefined }])]
}

function rectangleMarks(rectangle: Primitive & { kind: 'rectangle' }, placing: Placing): Mark[] {
  const { x, y, width, height } = rectangle
  const a = placing.point({ x, y: placing.yUp ? y + height : y })
  const [wide, high] = [width * placing.scale, height * placing.scale]
  if (rectangle.hatch !== undefined) {
    const corners = [a, { x: a.x + wide, y: a.y }, { x: a.x + wide, y: a.y + high }, { x: a.x, y: a.y + high }]
    return figureMarks(corners, true, inked(rectangle))
  }
  const box = { x: a.x, y: a.y, width: wide, height: high }
  return [{ kind: 'rectangle', ...box, ...lookOf(inked(rectangle)) }]
}

function circleMarks(circle: CirclePrimitive, placing: Placing): Mark[] {
  const center = placing.point(circle.center)
  const radius = circle.radiusPt ?? (circle.radius ?? 0) * placing.scale
  const { fromDeg, toDeg } = circle
  if (fromDeg === undefined || toDeg === undefined) {
    return [{ kind: 'circle', center, radius, ...lookOf(inked(circle)) }]
  }
  const steps = Math.max(2, Math.ceil(Math.abs(toDeg - fromDeg) / 6))
  const points = Array.from({ length: steps + 1 }, (_, step) => {
    const turn = radiansOf(fromDeg + ((toDeg - fromDeg) * step) / steps)
    return { x: center.x + radius * Math.cos(turn), y: center.y - radius * Math.sin(turn) }
  })
  return [{ kind: 'path', points, closed: false, ...lookOf(inked(circle)) }]
}

function expandDimension(dimension: DimensionPrimitive, placing: Placing): Expanded {
  const [from, to] = [placing.point(dimension.from), placing.point(dimension.to)]
  const length = Math.hypot(to.x - from.x, to.y - from.y)
  const [ux, uy] = length === 0 ? [1, 0] : [(to.x - from.x) / length, (to.y - from.y) / length]
  // Left of the way on paper, where y goes down.
  const [nx, ny] = [uy, -ux]
  const { offsetPt: offset, sizePt = NOTE_PT } = dimension
  const layer = layerOf(dimension)
  const sign = offset < 0 ? -1 : 1
  const at = (point: XY, distance: number, along = 0): XY => ({
    x: point.x + nx * distance + ux * along,
    y: point.y + ny * distance + uy * along,
  })
  const [a, b] = [at(from, offset), at(to, offset)]
  const tick = (point: XY): Mark => {
    const [dx, dy] = [2.2 * (ux + nx), 2.2 * (uy + ny)]
    return stroke(
      [
        { x: point.x - dx, y: point.y - dy },
        { x: point.x + dx, y: point.y + dy },
      ],
      layer,
      'medium',
    )
  }
  const marks: Mark[] = [stroke([at(a, 0, -3), at(b, 0, 3)], layer, 'hair'), tick(a), tick(b)]
  for (const point of dimension.between ?? []) marks.push(tick(at(placing.point(point), offset)))
  for (const point of [from, to]) {
    if (Math.abs(offset) > 4) marks.push(stroke([at(point, 2 * sign), at(point, offset + 3 * sign)], layer, 'hair'))
  }
  const width = textWidthPt(dimension.text, sizePt)
  const angle = degreesOf(Math.atan2(-uy, ux))
  const flipped = angle > 90.01 || angle <= -89.99
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }
  const beside = length / 2 + width / 2 + 6
  const along = (distance: number, away = 0): XY => ({ x: ux * distance + nx * away, y: uy * distance + ny * away })
  // Words over a line keep clear of the ticks at its ends.
  const fits = width + 4.6 <= length
  // Above the line as it is read, then below it, then farther off.
  const above = flipped ? -1 : 1
  const away = [0.62, 1.85, 3.05, 4.25].flatMap((level) => [
    along(0, (level * sizePt + 1.5) * above),
    along(0, -(level * sizePt + 1.5) * above),
  ])
  const ends = [along(beside), along(-beside)]
  // What may be left out does not go far from its line.
  const far = dimension.optional === true ? [] : away.slice(2)
  const order = fits ? [...away.slice(0, 2), ...ends, ...far] : [...ends, ...away.slice(0, 2), ...far]
  const text: TextPrimitive = {
    kind: 'text',
    layer,
    at: middle,
    text: dimension.text,
    sizePt,
    align: 'center',
    valign: 'middle',
    rotationDeg: Math.round((flipped ? angle + 180 : angle) * 1000) / 1000 + 0,
    halo: true,
    shifts: order,
    ...(dimension.optional === true ? { optional: true } : {}),
  }
  const part: Part = { kind: 'dimension', from, to, lineFrom: a, lineTo: b, text: dimension.text }
  return { marks, texts: [{ text, at: middle }], part }
}

function expandLeader(leader: LeaderPrimitive, placing: Placing): Expanded {
  const tip = placing.point(leader.tip)
  const layer = layerOf(leader)
  const right = leader.reachPt.x >= 0
  const end = { x: tip.x + leader.reachPt.x, y: tip.y + leader.reachPt.y }
  const knee = { x: end.x + (right ? -8 : 8), y: end.y }
  const marks: Mark[] = [stroke([tip, knee, end], layer, 'hair')]
  if (leader.end === 'arrow') {
    const turn = Math.atan2(knee.y - tip.y, knee.x - tip.x)
    const barb = (by: number): XY => ({ x: tip.x + 6 * Math.cos(turn + by), y: tip.y + 6 * Math.sin(turn + by) })
    const points = [tip, barb(0.26), barb(-0.26)]
    marks.push({ kind: 'path', layer, points, closed: true, dash: 'solid', color: 'black', fill: 'black' })
  } else {
    const dot = { center: tip, radius: 1.3 }
    marks.push({ kind: 'circle', layer, ...dot, dash: 'solid', color: 'black', fill: 'black' })
  }
  const text: TextPrimitive = {
    kind: 'text',
    layer,
    at: end,
    text: leader.text,
    sizePt: leader.sizePt ?? NOTE_PT,
    align: right ? 'left' : 'right',
    valign: 'middle',
    halo: true,
    ...(leader.maxWidthPt === undefined ? {} : { maxWidthPt: leader.maxWidthPt }),
  }
  return { marks, texts: [{ text, at: { x: end.x + (right ? 3 : -3), y: end.y } }] }
}
