import { label, line, TYPE_PT } from '../layout/index.js'
import { xy, type Primitive } from '../model/index.js'
import { sourceSymbol } from '../diagram/one-line-symbols.js'

const SIZE = TYPE_PT.small

/** What is there already, in grey and with finer pens. */
export function lighter(primitives: readonly Primitive[]): Primitive[] {
  return primitives.map((each): Primitive => {
    if (each.kind === 'text' || each.kind === 'dimension' || each.kind === 'leader') return each
    const pen = each.pen === 'heavy' ? 'medium' : each.pen === 'medium' ? 'thin' : each.pen
    return { ...each, layer: 'oneLineExisting', color: 'grey', pen, ...(each.fill === 'black' ? { fill: 'grey' } : {}) }
  })
}

/** A source that is there already. x is the left of its symbol, 26 pt wide. */
export function existingSource(of: 'pv' | 'storage' | 'generator', x: number, y: number): Primitive[] {
  if (of === 'pv') return lighter(sourceSymbol(x, y))
  if (of === 'storage') return lighter(batterySymbol(x, y))
  return [
    ...lighter([{ kind: 'circle', center: xy(x + 16, y), radiusPt: 10, pen: 'medium', fill: 'white' }]),
    label(x + 16, y, 'G', { sizePt: SIZE, face: 'bold', align: 'center', valign: 'middle' }),
  ]
}

/** Battery: two cells of a long thin plate (plus) and a short thick one. x is its left. @source IEEE 315 (form from memory) */
export function batterySymbol(x: number, y: number): Primitive[] {
  return [
    ...[6, 14].flatMap((at) => [
      line(x + at, y - 8, x + at, y + 8, { pen: 'medium' }),
      line(x + at + 4, y - 4, x + at + 4, y + 4, { pen: 'heavy' }),
    ]),
    line(x + 18, y, x + 26, y, { pen: 'medium' }),
    line(x + 1, y - 7, x + 4, y - 7),
    line(x + 2.5, y - 8.5, x + 2.5, y - 5.5),
  ]
}

/** Flag with the letter that joins two parts of a diagram; its tip points to the right. x is its left side, 24 pt from the tip. */
export function joinFlag(x: number, y: number, letter: string): Primitive[] {
  return [
    {
      kind: 'path',
      points: [xy(x, y - 8), xy(x + 15, y - 8), xy(x + 24, y), xy(x + 15, y + 8), xy(x, y + 8)],
      closed: true,
      pen: 'medium',
      fill: 'white',
    },
    label(x + 9, y, letter, { sizePt: SIZE, face: 'bold', align: 'center', valign: 'middle' }),
  ]
}

/** Where a wire branches off. */
export const dot = (x: number, y: number): Primitive => ({
  kind: 'circle',
  center: xy(x, y),
  radiusPt: 1.6,
  fill: 'black',
})

/** A level or plumb piece of a wire of the installation. */
export const wire = (x1: number, y1: number, x2: number, y2: number): Primitive =>
  line(x1, y1, x2, y2, { pen: 'medium' })
