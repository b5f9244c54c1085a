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
  const shape: Primitive =
    of === 'storage'
      ? { kind: 'rectangle', x, y: y - 9, width: 26, height: 18, pen: 'medium', fill: 'white' }
      : { kind: 'circle', center: xy(x + 16, y), radiusPt: 10, pen: 'medium', fill: 'white' }
  const at = of === 'storage' ? x + 13 : x + 16
  const word = of === 'storage' ? 'BAT' : 'G'
  return [...lighter([shape]), label(at, y, word, { sizePt: SIZE, face: 'bold', align: 'center', valign: 'middle' })]
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
