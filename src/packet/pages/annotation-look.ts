import { PDFDict, PDFName, PDFNumber, PDFRawStream, type PDFContext, type PDFObject } from '@cantoo/pdf-lib'
import { numbersOf } from './source-pages.js'

/** How an annotation looks, and where: `a 0 0 d e f` as the operator `cm` takes it. */
export interface AnnotationLook {
  readonly drawing: PDFObject
  readonly matrix: readonly [number, number, number, number, number, number]
}

/** Hidden, or not to be seen on a screen. */
const UNSEEN = 0b10_0010
/** These have no look of their own. */
const WITHOUT_LOOK: ReadonlySet<string> = new Set(['Link', 'Popup'])

/**
 * The look of an annotation that is drawn in its own stream: stamps, notes, highlights, filled form fields.
 *
 * @returns `unseen` when nothing is to be seen of it, `not drawn` when it is left to each viewer how it looks.
 * @source ISO 32000-1:2008, 12.5.5, algorithm 8.1; from memory.
 */
export function annotationLook(annotation: PDFDict, context: PDFContext): AnnotationLook | 'unseen' | 'not drawn' {
  const inside = (dict: PDFDict, name: string): PDFObject | undefined => context.lookup(dict.get(PDFName.of(name)))
  const flags = inside(annotation, 'F')
  const kind = inside(annotation, 'Subtype')
  if (flags instanceof PDFNumber && (flags.asNumber() & UNSEEN) !== 0) return 'unseen'
  if (kind instanceof PDFName && WITHOUT_LOOK.has(kind.decodeText())) return 'unseen'
  const looks = inside(annotation, 'AP')
  if (!(looks instanceof PDFDict)) return 'not drawn'
  const normal = looks.get(PDFName.of('N'))
  const states = context.lookup(normal)
  const state = inside(annotation, 'AS')
  const drawing = states instanceof PDFDict && state instanceof PDFName ? states.get(state) : normal
  const stream = context.lookup(drawing)
  // A box that is not ticked has no look.
  if (states instanceof PDFDict && stream === undefined) return 'unseen'
  if (!(stream instanceof PDFRawStream) || drawing === undefined) return 'not drawn'
  const rect = numbersOf(annotation.get(PDFName.of('Rect')), 4, context)
  const box = numbersOf(stream.dict.get(PDFName.of('BBox')), 4, context)
  const own = stream.dict.get(PDFName.of('Matrix'))
  const matrix = own === undefined ? [1, 0, 0, 1, 0, 0] : numbersOf(own, 6, context)
  if (rect === undefined || box === undefined || matrix === undefined) return 'not drawn'
  const fitted = fit(box, matrix, rect)
  return fitted === undefined ? 'unseen' : { drawing, matrix: fitted }
}

/** Scale and shift that bring a turned box into a rectangle; undefined when either is empty. */
function fit(
  box: readonly number[],
  matrix: readonly number[],
  rect: readonly number[],
): AnnotationLook['matrix'] | undefined {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = matrix
  const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] = box
  const corners = [x0, x1].flatMap((x) => [y0, y1].map((y) => [a * x + c * y + e, b * x + d * y + f] as const))
  const span = (values: readonly number[]): readonly [number, number] => [Math.min(...values), Math.max(...values)]
  const [left, right] = span(corners.map(([x]) => x))
  const [bottom, top] = span(corners.map(([, y]) => y))
  const [fromX, toX] = span([rect[0] ?? 0, rect[2] ?? 0])
  const [fromY, toY] = span([rect[1] ?? 0, rect[3] ?? 0])
  if (right === left || top === bottom || toX === fromX || toY === fromY) return undefined
  const [sx, sy] = [(toX - fromX) / (right - left), (toY - fromY) / (top - bottom)]
  return [sx, 0, 0, sy, fromX - left * sx, fromY - bottom * sy]
}
