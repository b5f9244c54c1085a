import { label, line } from '../layout/index.js'
import { blockHeightPt, CAP_HEIGHT, onLayer, wrapText, type Primitive, POINTS_PER_INCH } from '../model/index.js'
import type { LabelPart } from './label-style.js'
import type { RequiredLabel } from './required-labels.js'

const PAD = 7
const ROOF_PT = 62

/** Height of a label at true size, points. */
export function labelHeightPt(each: RequiredLabel, widthPt: number): number {
  return each.parts.reduce((sum, part) => sum + partHeight(part, widthPt), 0)
}

/** Height of type whose capitals have a height, points; never below it after rounding. */
function sizeOf(part: LabelPart): number {
  return Math.ceil(((part.capsIn * POINTS_PER_INCH) / CAP_HEIGHT) * 100) / 100
}

function linesOf(part: LabelPart, widthPt: number): string[] {
  return wrapText(part.text, sizeOf(part), 'bold', widthPt - 2 * PAD)
}

function partHeight(part: LabelPart, widthPt: number): number {
  if (part.figure !== undefined) return ROOF_PT + 2 * PAD
  return blockHeightPt(linesOf(part, widthPt).length, sizeOf(part)) + 2 * PAD
}

/** A label at true size. */
export function drawLabel(each: RequiredLabel, x: number, top: number, widthPt: number): Primitive[] {
  let y = top
  const drawn = each.parts.flatMap((part): Primitive[] => {
    const height = partHeight(part, widthPt)
    const at = y
    y += height
    const ground: Primitive = { kind: 'rectangle', x, y: at, width: widthPt, height, pen: 'thin', fill: part.ground }
    if (part.figure !== undefined)
      return [ground, ...roofFigure(x + widthPt / 2, at + PAD, part.figure === 'roof, array live' ? 'red' : 'mid')]
    const lines = linesOf(part, widthPt).join('\n')
    return [
      ground,
      label(x + widthPt / 2, at + PAD, lines, { sizePt: sizeOf(part), face: 'bold', color: part.ink, align: 'center' }),
    ]
  })
  const outline: Primitive = { kind: 'rectangle', x, y: top, width: widthPt, height: y - top, pen: 'heavy' }
  return onLayer('warningLabel', [...drawn, outline])
}

/** The house with its array, as the placard shows it: which part is shut down. */
function roofFigure(middle: number, y: number, array: 'red' | 'mid'): Primitive[] {
  const [left, right, eave, floor] = [middle - 62, middle + 62, y + 26, y + ROOF_PT]
  return [
    {
      kind: 'path',
      points: [
        { x: left - 8, y: eave },
        { x: middle, y },
        { x: right + 8, y: eave },
      ],
      pen: 'heavy',
    },
    line(left, eave, left, floor, { pen: 'medium' }),
    line(right, eave, right, floor, { pen: 'medium' }),
    line(left, floor, right, floor, { pen: 'medium' }),
    {
      kind: 'path',
      points: [
        { x: middle - 48, y: eave - 8 },
        { x: middle - 8, y: y + 2 },
        { x: middle - 8, y: y + 8 },
        { x: middle - 48, y: eave - 2 },
      ],
      closed: true,
      pen: 'thin',
      fill: array,
      dash: 'solid',
    },
    { kind: 'rectangle', x: right - 18, y: eave + 10, width: 12, height: 20, pen: 'medium', fill: 'white' },
    line(right - 12, eave + 10, right - 12, eave - 4, { pen: 'thin', dash: 'dashed' }),
  ]
}
