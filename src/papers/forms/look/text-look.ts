import { PDFName, PDFRawStream, type PDFContext } from '@cantoo/pdf-lib'
import { numberOf, textOf, valueOf, type FormField, type FormWidget } from '../document/index.js'
import { readDefaultLook } from './default-look.js'
import type { FormFonts } from './form-fonts.js'
import { listLines } from './list-look.js'
import { layText, type TextBox, type TextLayout } from './text-layout.js'
import { frameOf, pt, type WidgetFrame } from './widget-frame.js'

/** Free on each side of a text, inside the border. */
const PADDING_PT = 2
/** Ground of a chosen line of a list, as viewers show it. */
const CHOSEN = '0.6 0.757 0.855 rg'

/** What was drawn for one place of a field. */
export interface DrawnLook {
  readonly sizePt: number
  /** Why the text does not fit; undefined when it does. */
  readonly trouble: string | undefined
  /** Characters that no font at hand has. */
  readonly missing: readonly string[]
}

/**
 * Writes how a text, a drop-down or a list looks with what stands in it, for one of its places.
 *
 * @param shown The text, or the chosen lines of a list.
 * @param sizePt Size of the letters in place of that of the form, points; 0 when it follows the box.
 * @returns undefined when the form gives it no place to draw into.
 */
export function writeTextLook(
  field: FormField,
  widget: FormWidget,
  shown: readonly string[],
  fonts: FormFonts,
  sizePt?: number,
): DrawnLook | undefined {
  const frame = frameOf(widget)
  if (frame === undefined) return undefined
  // A place may ask for a look of its own.
  const look = readDefaultLook(textOf(valueOf(widget.dict, 'DA')) ?? field.defaultLook)
  const align = numberOf(valueOf(widget.dict, 'Q')) ?? field.alignment
  const askedPt = sizePt ?? look.sizePt
  const isList = field.kind === 'list'
  const text = isList ? field.choices.map((choice) => choice.text).join('\n') : shown.join('\n')
  const font = fonts.fontFor(look.fontName, text)
  const missing = font.missing(text)
  if (missing.length > 0) return { sizePt: askedPt, trouble: undefined, missing }
  const box: TextBox = {
    widthPt: frame.widthPt,
    heightPt: frame.heightPt,
    paddingPt: PADDING_PT + frame.borderPt,
    alignment: align === 1 || align === 2 ? align : 0,
    multiline: field.multiline,
    cells: field.comb ? field.maxLength : undefined,
    sizePt: askedPt,
  }
  const list = isList ? listLines(field.choices, shown, font, box) : undefined
  const layout: TextLayout = list ?? layText(text, font, box)
  const grounds = (list?.chosen ?? []).map(
    ({ y, heightPt }) => `${CHOSEN} 1 ${pt(y)} ${pt(frame.widthPt - 2)} ${pt(heightPt)} re f`,
  )
  const inside = Math.max(frame.borderPt, 1)
  const shows = layout.pieces.filter((piece) => piece.text !== '')
  const operators = [
    ...frame.operators,
    '/Tx BMC',
    'q',
    `${pt(inside)} ${pt(inside)} ${pt(frame.widthPt - 2 * inside)} ${pt(frame.heightPt - 2 * inside)} re W n`,
    ...grounds,
    'BT',
    `${look.colour} /F0 ${pt(layout.sizePt)} Tf`,
    ...shows.map((piece) => `1 0 0 1 ${pt(piece.x)} ${pt(piece.y)} Tm ${font.encode(piece.text)} Tj`),
    'ET',
    'Q',
    'EMC',
  ]
  putLook(widget, frame, operators.join('\n'), font.ref)
  return { sizePt: layout.sizePt, trouble: layout.trouble, missing: [] }
}

function putLook({ dict }: FormWidget, frame: WidgetFrame, content: string, font: unknown): void {
  const context: PDFContext = dict.context
  const stream = PDFRawStream.of(
    context.obj({
      Type: 'XObject',
      Subtype: 'Form',
      BBox: [0, 0, Number(pt(frame.widthPt)), Number(pt(frame.heightPt))],
      Matrix: frame.matrix.map((one) => Number(pt(one))),
      Resources: { Font: { F0: font as never } },
    }),
    new TextEncoder().encode(content),
  )
  dict.set(PDFName.of('AP'), context.obj({ N: context.register(stream) }))
}
