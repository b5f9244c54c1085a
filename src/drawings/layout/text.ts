import { xy, type Primitive, type TextPrimitive } from '../model/index.js'

/** Heights of type on paper, points; none is below 3/32 in. */
export const TYPE_PT = { small: 6.75, text: 7.5, head: 9.5, title: 14, number: 20 } as const

type Options = Omit<TextPrimitive, 'kind' | 'at' | 'text' | 'sizePt'> & { readonly sizePt?: number }

/** A text primitive at a place. */
export function label(x: number, y: number, text: string, options: Options = {}): TextPrimitive {
  return { kind: 'text', at: xy(x, y), text, sizePt: TYPE_PT.text, ...options }
}

/** A straight line. */
export function line(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  look: Partial<Primitive & { kind: 'path' }> = {},
): Primitive {
  return { kind: 'path', points: [xy(x1, y1), xy(x2, y2)], pen: 'thin', ...look }
}

/** A line through several points. */
export function polyline(
  points: readonly (readonly [number, number])[],
  look: Partial<Primitive & { kind: 'path' }> = {},
): Primitive {
  return { kind: 'path', points: points.map(([x, y]) => xy(x, y)), pen: 'thin', ...look }
}
