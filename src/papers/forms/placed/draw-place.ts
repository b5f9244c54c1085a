import { PDFRawStream, type PDFName } from '@cantoo/pdf-lib'
import { shorten } from '../../../project/index.js'
import { POINTS_PER_INCH } from '../../../values/index.js'
import type { OpenForm } from '../document/index.js'
import type { Filling, Trouble } from '../filling.js'
import { pt, wrapLines, type FormFonts, type LookFont } from '../look/index.js'
import type { MappedPlace } from '../mapping/index.js'
import { noGlyph, doesNotFit } from '../look-troubles.js'
import { seenPage } from './seen-page.js'

/** Letters and marks where the mapping asks for no size, points. */
const USUAL_PT = 10
/** Distance of baselines over height of type, as in fields of several lines. */
const LEADING = 1.15
/** Share of the size below the line that letters reach. */
const DESCENT = 0.22
/** Rounding of measures on paper. */
const SLACK_PT = 0.01

export const sizeOf = ({ size_pt: size = USUAL_PT }: MappedPlace): number => size

/** How far down from the upper edge of the page a place reaches, points. */
export function lowestPt(place: MappedPlace): number {
  const size = sizeOf(place)
  const below = place.mark === true ? size / 2 : (((place.lines ?? 1) - 1) * LEADING + DESCENT) * size
  return place.y_in * POINTS_PER_INCH + below
}

/** Draws what goes into a place onto its page; what cannot be seen whole is told, and not drawn. */
export function drawPlace(form: OpenForm, place: MappedPlace, filling: Filling, fonts: FormFonts): Trouble[] {
  if (filling.kind === 'choices') throw new Error('a place has no choices')
  const page = form.pdf.getPages()[place.page - 1]
  if (page === undefined) throw new Error('the mapping was not matched with the form')
  const { heightPt, matrix } = seenPage(page)
  const at = { x: place.x_in * POINTS_PER_INCH, y: heightPt - place.y_in * POINTS_PER_INCH }
  const draw = (operators: readonly string[]): void => {
    const content = ['q', `${matrix.map(pt).join(' ')} cm`, ...operators, 'Q', ''].join('\n')
    const stream = PDFRawStream.of(form.pdf.context.obj({}), new TextEncoder().encode(content))
    page.node.addContentStream(form.pdf.context.register(stream))
  }
  if (filling.kind === 'state') {
    if (filling.state !== undefined) {
      page.node.normalize()
      draw(cross(at, sizeOf(place)))
    }
    return []
  }
  const font = fonts.fontFor('', filling.text)
  const missing = font.missing(filling.text)
  if (missing.length > 0) return [noGlyph(place.name, missing)]
  const { lines, trouble } = layPlace(filling.text, place, font)
  if (trouble !== undefined) return [doesNotFit(place.name, place.page, shorten(filling.text), trouble)]
  const size = sizeOf(place)
  const key: PDFName = page.node.newFontDictionary('Placed', font.ref)
  draw([
    'BT',
    `0 g ${key.toString()} ${pt(size)} Tf`,
    ...lines.map((line, index) => {
      return `1 0 0 1 ${pt(at.x)} ${pt(at.y - index * LEADING * size)} Tm ${font.encode(line)} Tj`
    }),
    'ET',
  ])
  return []
}

function layPlace(
  text: string,
  place: MappedPlace,
  font: LookFont,
): { readonly lines: readonly string[]; readonly trouble: string | undefined } {
  const size = sizeOf(place)
  const roomPt = (place.width_in ?? 0) * POINTS_PER_INCH
  const most = place.lines ?? 1
  const lines = most === 1 ? [text] : wrapLines(text, (line) => font.widthPt(line, size), roomPt)
  const widest = Math.max(...lines.map((line) => font.widthPt(line, size)))
  const trouble =
    lines.length > most
      ? `its ${lines.length} lines at ${size} pt letters are more than the ${most} that there is room for`
      : widest > roomPt + SLACK_PT
        ? `it is ${widest.toFixed(0)} pt wide at ${size} pt letters, and the place holds ${roomPt.toFixed(0)} pt`
        : undefined
  return { lines, trouble }
}

/** A cross around its middle. */
function cross({ x, y }: { readonly x: number; readonly y: number }, sizePt: number): string[] {
  const half = 0.35 * sizePt
  const stroke = (a: number, b: number): string => `${pt(x - a)} ${pt(y - b)} m ${pt(x + a)} ${pt(y + b)} l S`
  return [`0 G ${pt(Math.max(0.8, sizePt / 10))} w`, stroke(half, half), stroke(half, -half)]
}
