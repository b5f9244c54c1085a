import { feetInches, label, line, TYPE_PT, type Scale } from '../layout/index.js'
import { xy, type Primitive } from '../model/index.js'
import { feetOf, type Feet, type Inches } from '../../values/index.js'
import { clipName } from '../tree/clip-name.js'
import { outlineOf, type EquipmentWall, type WallPiece } from './equipment-walls.js'
import { HIGHEST_HANDLE_IN, neededSpace, needsSpace } from './working-space.js'

const SIZE = TYPE_PT.small
/** What is shown of the wall beyond its outer pieces, ft, and room below the ground for dimensions, points. */
const BESIDE_FT = 2
const BELOW_PT = 52
const ABOVE_PT = 30

/** What of a wall is drawn: from and to along it, and how high. */
export interface WallExtent {
  readonly fromFt: Feet
  readonly toFt: Feet
  readonly highFt: Feet
}

export function extentOf({ pieces, lengthFt }: EquipmentWall): WallExtent {
  const at = pieces.map(({ alongFt }) => alongFt)
  const tops = pieces.map(({ stated }) => (stated.bottom_in ?? 0) + (stated.height_in ?? 0))
  return {
    fromFt: Math.max(0, Math.min(...at) - BESIDE_FT),
    toFt: Math.min(lengthFt, Math.max(...at) + BESIDE_FT),
    highFt: Math.max(7.5, feetOf(Math.max(...tops)) + 0.5),
  }
}

/** Height of the figure of a wall at a scale, points. */
export const wallHeightPt = ({ highFt }: WallExtent, { ptPerFt }: Scale): number =>
  highFt * ptPerFt + BELOW_PT + ABOVE_PT

/** How the figure stands on paper. */
interface Place {
  readonly x: (alongFt: Feet) => number
  readonly y: (aboveIn: Inches) => number
  readonly ptPerFt: number
}

/**
 * A wall with its equipment to scale, seen from outside.
 *
 * @param numbers Numbers of the labels at a piece.
 */
export function drawWall(
  wall: EquipmentWall,
  scale: Scale,
  [left, top, widthPt]: readonly [number, number, number],
  numbers: (piece: WallPiece) => readonly number[],
): Primitive[] {
  const extent = extentOf(wall)
  const { ptPerFt } = scale
  const ground = top + ABOVE_PT + extent.highFt * ptPerFt
  const start = left + Math.max(0, (widthPt - (extent.toFt - extent.fromFt) * ptPerFt) / 2)
  const place: Place = {
    x: (alongFt) => start + (alongFt - extent.fromFt) * ptPerFt,
    y: (aboveIn) => ground - feetOf(aboveIn) * ptPerFt,
    ptPerFt,
  }
  const [x0, x1] = [place.x(extent.fromFt), place.x(extent.toFt)]
  const handleY = place.y(HIGHEST_HANDLE_IN)
  return [
    line(x0 - 20, ground, x1 + 20, ground, { pen: 'heavy' }),
    ...[
      [0, extent.fromFt, x0],
      [wall.lengthFt, extent.toFt, x1],
    ].flatMap(([corner, end, x]) =>
      corner === end ? [line(x ?? 0, ground, x ?? 0, top + ABOVE_PT, { pen: 'medium' })] : [],
    ),
    line(x0 - 20, handleY, x1 + 20, handleY, { pen: 'hair', dash: 'center' }),
    label(x1 + 22, handleY, `${feetInches(feetOf(HIGHEST_HANDLE_IN))} highest grip of a switch or breaker`, {
      sizePt: SIZE,
      valign: 'middle',
      maxWidthPt: 90,
    }),
    ...wall.pieces.flatMap((piece) => drawPiece(piece, place, numbers(piece))),
    ...apart(wall, place, ground),
  ]
}

/** One piece: to scale with its heights, or a line where it stands while they are not stated. */
function drawPiece(piece: WallPiece, place: Place, numbers: readonly number[]): Primitive[] {
  const { stated, alongFt, name } = piece
  const x = place.x(alongFt)
  const outline = outlineOf(stated)
  const room = Math.max(44, 2.2 * place.ptPerFt)
  const words = clipName(name, SIZE, 'bold', room)
  if (outline === undefined)
    return [
      line(x, place.y(0), x, place.y(60), { pen: 'thin', dash: 'dashed' }),
      label(x, place.y(60) - 2, `${words}\nheight and size not stated`, {
        sizePt: SIZE,
        align: 'center',
        valign: 'bottom',
        maxWidthPt: room,
      }),
      ...balloons(numbers, x, place.y(60) - 34, place.y(HIGHEST_HANDLE_IN)),
    ]
  const { bottomIn, widthIn, heightIn } = outline
  const width = feetOf(widthIn) * place.ptPerFt
  const [high, low] = [place.y(bottomIn + heightIn), place.y(bottomIn)]
  const meter = stated.kind === 'utility_meter' || stated.kind === 'production_meter'
  return [
    ...workingSpace(piece, place),
    { kind: 'rectangle', x: x - width / 2, y: high, width, height: low - high, pen: 'medium', fill: 'white' },
    ...(meter
      ? ([
          {
            kind: 'circle',
            center: xy(x, (high + low) / 2),
            radiusPt: Math.min(width, low - high) * 0.42,
            pen: 'thin',
          },
        ] as const)
      : []),
    ...(stated.handle_in === undefined
      ? []
      : [line(x - 4, place.y(stated.handle_in), x + 4, place.y(stated.handle_in), { pen: 'medium' })]),
    label(x, low + 2, words, { sizePt: SIZE, face: 'bold', align: 'center', maxWidthPt: room, halo: true }),
    ...balloons(numbers, x, high - 9, place.y(HIGHEST_HANDLE_IN)),
    {
      kind: 'dimension',
      from: xy(x - width / 2, place.y(0)),
      to: xy(x - width / 2, meter ? (high + low) / 2 : low),
      // Left of the name.
      offsetPt: Math.max(9, (room - width) / 2 + 4),
      text: feetInches(feetOf(meter ? bottomIn + heightIn / 2 : bottomIn)),
      sizePt: SIZE,
    },
  ]
}

/** Width and height that stay clear in front of a piece, from the ground up. */
function workingSpace({ stated, alongFt }: WallPiece, place: Place): Primitive[] {
  if (!needsSpace(stated)) return []
  const { widthIn, heightIn } = neededSpace(stated)
  const width = feetOf(widthIn) * place.ptPerFt
  return [
    {
      kind: 'rectangle',
      x: place.x(alongFt) - width / 2,
      y: place.y(heightIn),
      width,
      height: place.y(0) - place.y(heightIn),
      pen: 'thin',
      dash: 'dotted',
    },
  ]
}

/** Numbers of labels in rows upwards from `y`, none of them on the line at `lineY`. */
function balloons(numbers: readonly number[], x: number, y: number, lineY: number): Primitive[] {
  const PER_ROW = 4
  const rowY: number[] = []
  for (let row = 0, next = y; row * PER_ROW < numbers.length; row++, next -= 12.5) {
    if (Math.abs(next - lineY) < 7) next = lineY - 7
    rowY.push(next)
  }
  return numbers.flatMap((number, index): Primitive[] => {
    const row = Math.floor(index / PER_ROW)
    const inRow = Math.min(PER_ROW, numbers.length - row * PER_ROW)
    const cx = x + ((index % PER_ROW) - (inRow - 1) / 2) * 12.5
    const cy = rowY[row] ?? y
    return [
      { kind: 'circle', center: xy(cx, cy), radiusPt: 5.8, pen: 'thin', fill: 'white' },
      label(cx, cy, String(number), { sizePt: SIZE, face: 'bold', align: 'center', valign: 'middle' }),
    ]
  })
}

/** Distances from middle to middle, under the ground. */
function apart({ pieces }: EquipmentWall, place: Place, ground: number): Primitive[] {
  return pieces.slice(1).map((piece, index): Primitive => {
    const before = pieces[index]?.alongFt ?? 0
    return {
      kind: 'dimension',
      from: xy(place.x(before), ground),
      to: xy(place.x(piece.alongFt), ground),
      offsetPt: -26,
      text: feetInches(piece.alongFt - before),
      sizePt: SIZE,
    }
  })
}
