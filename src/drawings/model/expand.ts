import type { XY } from './geometry.js'
import { hatchLines } from './hatch-lines.js'
import { rounded, roundedPoint, type Mark } from './mark.js'
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

/** Turns a primitive into marks and texts on paper. */
export function expand(primitive: Primitive, placing: Placing): { marks: Mark[]; texts: PlacedText[] } {
  switch (primitive.kind) {
    case 'path':
      return {
        marks: figureMarks(primitive.points.map(placing.point), primitive.closed === true, primitive),
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

function lookOf(look: Look): Pick<Mark & { kind: 'path' }, 'pen' | 'dash' | 'color' | 'fill'> {
  return { pen: look.pen, dash: look.dash ?? 'solid', color: look.color ?? 'black', fill: look.fill }
}

function stroke(points: readonly XY[], pen: Look['pen'] = 'thin', color: Look['color'] = 'black'): Mark {
  return { kind: 'path', points: points.map(roundedPoint), closed: false, pen, dash: 'solid', color }
}

function figureMarks(points: readonly XY[], closed: boolean, look: Look): Mark[] {
  const hatch =
    look.hatch === undefined ? [] : hatchLines(points, look.hatch).map((line) => stroke(line, 'hair', 'grey'))
  const filled: Mark[] =
    look.fill === undefined || hatch.length === 0
      ? []
      : [{ kind: 'path', points: points.map(roundedPoint), closed, ...lookOf({ fill: look.fill }) }]
  if (hatch.length > 0 && look.pen === undefined) return [...filled, ...hatch]
  const outline: Mark = {
    kind: 'path',
    points: points.map(roundedPoint),
    closed,
    ...lookOf(hatch.length > 0 ? { ...look, fill: undefined } : look),
  }
  return [...filled, ...hatch, outline]
}

function rectangleMarks(rectangle: Primitive & { kind: 'rectangle' }, placing: Placing): Mark[] {
  const { x, y, width, height } = rectangle
  const a = placing.point({ x, y: placing.yUp ? y + height : y })
  const [wide, high] = [width * placing.scale, height * placing.scale]
  if (rectangle.hatch !== undefined) {
    const corners = [a, { x: a.x + wide, y: a.y }, { x: a.x + wide, y: a.y + high }, { x: a.x, y: a.y + high }]
    return figureMarks(corners, true, rectangle)
  }
  const box = { x: rounded(a.x), y: rounded(a.y), width: rounded(wide), height: rounded(high) }
  return [{ kind: 'rectangle', ...box, ...lookOf(rectangle) }]
}

function circleMarks(circle: CirclePrimitive, placing: Placing): Mark[] {
  const center = placing.point(circle.center)
  const radius = circle.radiusPt ?? (circle.radius ?? 0) * placing.scale
  const { fromDeg, toDeg } = circle
  if (fromDeg === undefined || toDeg === undefined) {
    return [{ kind: 'circle', center: roundedPoint(center), radius: rounded(radius), ...lookOf(circle) }]
  }
  const steps = Math.max(2, Math.ceil(Math.abs(toDeg - fromDeg) / 6))
  const points = Array.from({ length: steps + 1 }, (_, step) => {
    const turn = radiansOf(fromDeg + ((toDeg - fromDeg) * step) / steps)
    return roundedPoint({ x: center.x + radius * Math.cos(turn), y: center.y - radius * Math.sin(turn) })
  })
  return [{ kind: 'path', points, closed: false, ...lookOf(circle) }]
}

function expandDimension(dimension: DimensionPrimitive, placing: Placing): { marks: Mark[]; texts: PlacedText[] } {
  const [from, to] = [placing.point(dimension.from), placing.point(dimension.to)]
  const length = Math.hypot(to.x - from.x, to.y - from.y)
  const [ux, uy] = length === 0 ? [1, 0] : [(to.x - from.x) / length, (to.y - from.y) / length]
  // Left of the way on paper, where y goes down.
  const [nx, ny] = [uy, -ux]
  const { offsetPt: offset, sizePt = NOTE_PT } = dimension
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
      'medium',
    )
  }
  const marks: Mark[] = [stroke([at(a, 0, -3), at(b, 0, 3)], 'hair'), tick(a), tick(b)]
  for (const point of dimension.between ?? []) marks.push(tick(at(placing.point(point), offset)))
  for (const point of [from, to]) {
    if (Math.abs(offset) > 4) marks.push(stroke([at(point, 2 * sign), at(point, offset + 3 * sign)], 'hair'))
  }
  const width = textWidthPt(dimension.text, sizePt)
  const angle = degreesOf(Math.atan2(-uy, ux))
  const flipped = angle > 90.01 || angle <= -89.99
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }
  const beside = length / 2 + width / 2 + 6
  const along = (distance: number, away = 0): XY => ({ x: ux * distance + nx * away, y: uy * distance + ny * away })
  const fits = width + 8 <= length
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
  return { marks, texts: [{ text, at: middle }] }
}

function expandLeader(leader: LeaderPrimitive, placing: Placing): { marks: Mark[]; texts: PlacedText[] } {
  const tip = placing.point(leader.tip)
  const right = leader.reachPt.x >= 0
  const end = { x: tip.x + leader.reachPt.x, y: tip.y + leader.reachPt.y }
  const knee = { x: end.x + (right ? -8 : 8), y: end.y }
  const marks: Mark[] = [stroke([tip, knee, end], 'hair')]
  if (leader.end === 'arrow') {
    const turn = Math.atan2(knee.y - tip.y, knee.x - tip.x)
    const barb = (by: number): XY => ({ x: tip.x + 6 * Math.cos(turn + by), y: tip.y + 6 * Math.sin(turn + by) })
    const points = [tip, barb(0.26), barb(-0.26)].map(roundedPoint)
    marks.push({ kind: 'path', points, closed: true, dash: 'solid', color: 'black', fill: 'black' })
  } else {
    marks.push({ kind: 'circle', center: roundedPoint(tip), radius: 1.3, dash: 'solid', color: 'black', fill: 'black' })
  }
  const text: TextPrimitive = {
    kind: 'text',
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
