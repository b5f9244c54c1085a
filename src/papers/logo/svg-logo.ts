import { escapeMarkup } from '../../report/index.js'
import type { PictureSize } from './png-size.js'
import { readSvgShapes, type SvgShape } from './svg-shapes.js'

/** An SVG of shapes alone, rebuilt from what was understood of it. */
export interface SvgLogo extends PictureSize {
  readonly svg: string
  /** Draws it at the size of its view box, from the origin. */
  readonly drawPdf: (doc: PDFKit.PDFDocument) => void
}

/** The shapes of an SVG, or in words why they cannot be taken. */
export function readSvgLogo(bytes: Uint8Array): SvgLogo | string {
  const read = readSvgShapes(bytes)
  if (typeof read === 'string') return read
  const { box, shapes } = read
  const [left, top, width, height] = box
  const inside = shapes.map(shapeText).join('')
  return {
    width,
    height,
    svg: `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box.join(' ')}" width="${width}" height="${height}">${inside}</svg>`,
    drawPdf: (doc) => {
      doc.rect(0, 0, width, height).clip()
      doc.translate(-left, -top)
      for (const shape of shapes) drawShape(doc, shape)
    },
  }
}

function shapeText({ d, matrices, fill, stroke, strokeWidth, evenOdd }: SvgShape): string {
  const moved =
    matrices.length === 0 ? '' : ` transform="${matrices.map((each) => `matrix(${each.join(' ')})`).join(' ')}"`
  const line = stroke === undefined ? '' : ` stroke="${escapeMarkup(stroke)}" stroke-width="${strokeWidth}"`
  return `<path d="${escapeMarkup(d)}" fill="${escapeMarkup(fill ?? 'none')}"${evenOdd ? ' fill-rule="evenodd"' : ''}${line}${moved}/>`
}

function drawShape(doc: PDFKit.PDFDocument, { d, matrices, fill, stroke, strokeWidth, evenOdd }: SvgShape): void {
  if (fill === undefined && stroke === undefined) return
  doc.save()
  for (const [a, b, c, e, f, g] of matrices) doc.transform(a, b, c, e, f, g)
  doc.path(d).lineWidth(strokeWidth).undash()
  const rule = evenOdd ? 'even-odd' : 'non-zero'
  if (fill === undefined) doc.stroke(stroke)
  else if (stroke === undefined) doc.fill(fill, rule)
  else doc.fillAndStroke(fill, stroke, rule)
  doc.restore()
}
