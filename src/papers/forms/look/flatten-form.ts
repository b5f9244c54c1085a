import { PDFArray, PDFDict, PDFName, PDFRawStream, PDFRef, type PDFDocument, type PDFPage } from '@cantoo/pdf-lib'
import { FileError } from '../../../files/index.js'
import { annotationLook } from '../../../packet/pages/index.js'
import { FIELD_FLAG, hasFlag, numberOf, textOf, valueOf, type OpenForm } from '../document/index.js'
import { pt } from './widget-frame.js'

/**
 * Draws what the fields show into the pages and takes the fields away. Widgets that are hidden, that have no look, and
 * push buttons are not drawn, and nothing of the fields stays in the file, hidden values neither. In a form that is
 * tagged for screen readers the objects stay, as its tags point at them.
 *
 * @throws FileError with the number of a page that cannot be drawn into.
 * @source ISO 32000-1:2008, 12.5.5, algorithm 8.1; from memory.
 */
export function flattenForm({ pdf, fields, tagged }: OpenForm): void {
  for (const [index, page] of pdf.getPages().entries()) {
    try {
      flattenPage(page, pdf)
    } catch (error) {
      throw new FileError(`page ${index + 1} of the form is broken, so that nothing can be drawn into it`, {
        exitCode: 2,
        cause: error,
      })
    }
  }
  pdf.catalog.delete(PDFName.of('AcroForm'))
  if (tagged) return
  for (const dict of fields.flatMap((field) => [...field.dicts, ...field.widgets.map((widget) => widget.dict)])) {
    const ref = pdf.context.getObjectRef(dict)
    if (ref !== undefined) pdf.context.delete(ref)
  }
}

function flattenPage(page: PDFPage, pdf: PDFDocument): void {
  const { context } = pdf
  const { node } = page
  const annotations = valueOf(node, 'Annots')
  if (!(annotations instanceof PDFArray)) return
  const kept: ReturnType<PDFArray['asArray']> = []
  const drawn: string[] = []
  for (const item of annotations.asArray()) {
    const widget = context.lookup(item)
    if (!(widget instanceof PDFDict) || textOf(valueOf(widget, 'Subtype')) !== 'Widget') {
      kept.push(item)
      continue
    }
    const look = isPushButton(widget) ? 'unseen' : annotationLook(widget, context)
    if (typeof look === 'string') continue
    const ref = look.drawing instanceof PDFRef ? look.drawing : context.register(look.drawing)
    const name = node.newXObject('Field', asForm(ref, pdf))
    drawn.push(`q ${look.matrix.map(pt).join(' ')} cm ${name.toString()} Do Q`)
  }
  if (kept.length > 0) node.set(PDFName.of('Annots'), context.obj(kept))
  else node.delete(PDFName.of('Annots'))
  if (drawn.length > 0) {
    const content = PDFRawStream.of(context.obj({}), new TextEncoder().encode(`${drawn.join('\n')}\n`))
    node.addContentStream(context.register(content))
  }
}

/** The look of a field often lacks the word that it is a form. */
function asForm(ref: PDFRef, pdf: PDFDocument): PDFRef {
  const stream = pdf.context.lookup(ref)
  if (stream instanceof PDFRawStream) stream.dict.set(PDFName.of('Subtype'), PDFName.of('Form'))
  return ref
}

/** Its own flags or those of the field above it. */
function isPushButton(widget: PDFDict): boolean {
  let dict: PDFDict | undefined = widget
  let [type, flags]: [string | undefined, number | undefined] = [undefined, undefined]
  for (let depth = 0; dict !== undefined && depth < 60; depth++) {
    type ??= textOf(valueOf(dict, 'FT'))
    flags ??= numberOf(valueOf(dict, 'Ff'))
    const parent = valueOf(dict, 'Parent')
    dict = parent instanceof PDFDict ? parent : undefined
  }
  return type === 'Btn' && flags !== undefined && hasFlag(flags, FIELD_FLAG.pushButton)
}
