import { PDFName, PDFRawStream, type PDFDict } from '@cantoo/pdf-lib'
import { shorten } from '../../project/index.js'
import { dictOf, valueOf, type FormField, type OpenForm } from './document/index.js'
import type { Fill, Trouble } from './filling.js'
import { doesNotFit, noGlyph } from './look-troubles.js'
import { writeTextLook, type FormFonts } from './look/index.js'

/** Writes how a filled text, drop-down or list looks at each of its places, and tells what cannot be seen so. */
export function writeLooks({ field, filling, entry, shown }: Fill, fonts: FormFonts): Trouble[] {
  const name = field.name
  const troubles: Trouble[] = []
  const places = field.widgets.filter((widget) => widget.rect !== undefined)
  if (places.every((widget) => widget.unseen)) {
    const message = `'${name}' has no place that can be seen, so that its value does not stand on paper`
    troubles.push({ severity: 'warning', id: 'form.not-seen', message })
  }
  if (filling.kind === 'state') return troubles
  const lines = filling.kind === 'text' ? [filling.text] : filling.choices.map(({ text }) => text)
  for (const widget of field.widgets) {
    const look = writeTextLook(field, widget, lines, fonts, entry.size_pt)
    if (look === undefined) continue
    if (look.missing.length > 0) troubles.push(noGlyph(name, look.missing))
    if (look.trouble !== undefined) {
      const severity = field.kind === 'list' ? 'warning' : 'error'
      troubles.push(doesNotFit(name, widget.page, shorten(shown), look.trouble, severity))
    }
  }
  // The same is told once, however many places show it.
  return [...new Map(troubles.map((trouble) => [trouble.message, trouble])).values()]
}

/** Writes how values look that stood in the form before, where the form left that to the viewer. */
export function writeOtherLooks(form: OpenForm, filled: ReadonlySet<string>, fonts: FormFonts): void {
  const leftToViewer = valueOf(form.acroForm, 'NeedAppearances')?.toString() === 'true'
  form.acroForm.delete(PDFName.of('NeedAppearances'))
  for (const field of form.fields) {
    const isText = field.kind === 'text' || field.kind === 'drop-down' || field.kind === 'list'
    if (!isText || field.password || filled.has(field.name) || field.value.length === 0) continue
    for (const widget of field.widgets) {
      if (!leftToViewer && hasLook(widget.dict)) continue
      writeTextLook(field, widget, seenOf(field), fonts)
    }
  }
}

function seenOf({ value, choices }: FormField): readonly string[] {
  return value.map((one) => choices.find((choice) => choice.value === one)?.text ?? one)
}

function hasLook(dict: PDFDict): boolean {
  const looks = dictOf(dict, 'AP')
  return looks !== undefined && valueOf(looks, 'N') instanceof PDFRawStream
}
