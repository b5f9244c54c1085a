import { label, textWidthPt, type Primitive } from '../../drawings/index.js'
import { radiansOf, type Degrees, type Point } from '../../values/index.js'

/** A roof plane with its modules, plane coordinates in ft: x along the eave to the right, y up the slope. */
export interface PicturedPlane {
  readonly name: string
  readonly facing: string
  readonly azimuthDeg: Degrees
  readonly corners: readonly Point[]
  readonly things: readonly (readonly Point[])[]
  readonly modules: readonly {
    readonly xFt: number
    readonly yFt: number
    readonly widthFt: number
    readonly heightFt: number
  }[]
}

const GAP = 22
/** North arrows of 11 pt need so much room at the left of the words. */
const ARROW = 30

/** Roof planes beside each other at one scale, each as seen from in front of it, with a line of words above. */
export function roofPicture(
  planes: readonly PicturedPlane[],
  mostHeightPt: number,
  sizePt: number,
): (widthPt: number) => { readonly heightPt: number; readonly draw: (x: number, y: number) => Primitive[] } {
  const boxes = planes.map(boxOf)
  return (widthPt) => {
    const head = 2 * sizePt * 1.3 + 14
    const rows = rowsOf(planes, boxes, widthPt, sizePt)
    const drawnPt = (mostHeightPt - rows.length * head - (rows.length - 1) * GAP) / rows.length
    const scale = Math.min(
      ...rows.map(
        (row) => (widthPt - GAP * (row.length - 1)) / row.reduce((sum, at) => sum + (boxes[at]?.width ?? 0), 0),
      ),
      ...boxes.map(({ height }) => drawnPt / height),
      9,
    )
    const heights = rows.map((row) => head + Math.max(...row.map((at) => (boxes[at]?.height ?? 0) * scale)))
    const heightPt = heights.reduce((sum, each) => sum + each, 0) + GAP * (rows.length - 1)
    const draw = (x: number, y: number): Primitive[] => {
      const drawn: Primitive[] = []
      let top = y
      for (const [index, row] of rows.entries()) {
        let left = x
        for (const at of row) {
          const [plane, box] = [planes[at], boxes[at]]
          if (plane === undefined || box === undefined) continue
          drawn.push(...drawPlane(plane, box, { left, top, head, scale, sizePt }))
          left += Math.max(box.width * scale, headWidth(plane, sizePt)) + GAP
        }
        top += (heights[index] ?? 0) + GAP
      }
      return drawn
    }
    return { heightPt, draw }
  }
}

interface Extent {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** All that is drawn of a plane: modules may overhang its edge. */
function boxOf({ corners, modules, things }: PicturedPlane): Extent {
  const all = [
    ...corners,
    ...things.flat(),
    ...modules.flatMap(({ xFt, yFt, widthFt, heightFt }) => [
      { xFt, yFt },
      { xFt: xFt + widthFt, yFt: yFt + heightFt },
    ]),
  ]
  const [xs, ys] = [all.map(({ xFt }) => xFt), all.map(({ yFt }) => yFt)]
  const [x, y] = [Math.min(...xs), Math.min(...ys)]
  return { x, y, width: Math.max(1, Math.max(...xs) - x), height: Math.max(1, Math.max(...ys) - y) }
}

const headWidth = ({ name, facing }: PicturedPlane, sizePt: number): number =>
  ARROW + Math.max(textWidthPt(name, sizePt, 'bold'), textWidthPt(facing, sizePt))

/** As many planes in a row as their words leave room for, three at the most. */
function rowsOf(
  planes: readonly PicturedPlane[],
  boxes: readonly Extent[],
  widthPt: number,
  sizePt: number,
): number[][] {
  const rows: number[][] = []
  let used = Infinity
  for (const [index, plane] of planes.entries()) {
    const need = Math.max(headWidth(plane, sizePt), (boxes[index]?.width ?? 0) * 3) + GAP
    const row = rows.at(-1)
    if (row === undefined || used + need > widthPt + GAP || row.length === 3) {
      rows.push([index])
      used = need
    } else {
      row.push(index)
      used += need
    }
  }
  return rows
}

interface Place {
  readonly left: number
  readonly top: number
  readonly head: number
  readonly scale: number
  readonly sizePt: number
}

function drawPlane(plane: PicturedPlane, box: Extent, { left, top, head, scale, sizePt }: Place): Primitive[] {
  const paper = ({ xFt, yFt }: Point) => ({
    x: left + (xFt - box.x) * scale,
    y: top + head + (box.y + box.height - yFt) * scale,
  })
  return [
    ...arrow(left + 12, top + 4 + sizePt * 1.25, plane.azimuthDeg, sizePt),
    label(left + ARROW, top + 4, plane.name, { sizePt, face: 'bold' }),
    label(left + ARROW, top + 4 + sizePt * 1.3, plane.facing, { sizePt, color: 'grey' }),
    { kind: 'path', points: plane.corners.map(paper), closed: true, pen: 'medium', color: 'grey', fill: 'light' },
    ...plane.things.map((thing): Primitive => ({
      kind: 'path',
      points: thing.map(paper),
      closed: true,
      pen: 'thin',
      color: 'grey',
      hatch: { angleDeg: -45, gapPt: 3 },
    })),
    ...plane.modules.map(({ xFt, yFt, widthFt, heightFt }): Primitive => {
      const at = paper({ xFt, yFt: yFt + heightFt })
      return {
        kind: 'rectangle',
        ...at,
        width: widthFt * scale,
        height: heightFt * scale,
        pen: 'thin',
        color: 'white',
        fill: 'pine',
      }
    }),
  ]
}

/** North on paper where up the slope is up: a plane that faces south has it at the top. */
function arrow(x: number, y: number, azimuthDeg: Degrees, sizePt: number): Primitive[] {
  const turn = radiansOf(180 - azimuthDeg)
  const at = (along: number, across: number) => ({
    x: x + along * Math.sin(turn) + across * Math.cos(turn),
    y: y - along * Math.cos(turn) + across * Math.sin(turn),
  })
  const letter = at(13, 0)
  return [
    { kind: 'path', points: [at(7, 0), at(-8, 4.5), at(-5, 0), at(-8, -4.5)], closed: true, fill: 'grey' },
    label(letter.x, letter.y, 'N', { sizePt, face: 'bold', align: 'center', valign: 'middle', color: 'grey' }),
  ]
}
