import { PDFDict, PDFName, PDFString, type PDFObject } from '@cantoo/pdf-lib'
import { dictOf, pdfText, textOf, valueOf, type FieldState, type FormField, type OpenForm } from './document/index.js'
import type { Fill } from './filling.js'
import { readDefaultLook, type FormFonts } from './look/index.js'

const OFF = PDFName.of('Off')

/** Puts the value of a field into the form, not yet its look. Both places of a field of one name get it. */
export function writeValue({ field, filling, entry }: Fill, form: OpenForm, fonts: FormFonts): void {
  if (filling.kind === 'state') {
    writeState(field, filling.state)
    return
  }
  const [value, indexes] =
    filling.kind === 'text' ? [pdfText(filling.text), undefined] : chosen(field, filling.choices, form)
  for (const dict of field.dicts) {
    dict.set(PDFName.of('V'), value)
    // The same text with another look, or the choice by number, would speak against it.
    for (const key of ['RV', 'I', 'TI']) dict.delete(PDFName.of(key))
    if (indexes !== undefined) dict.set(PDFName.of('I'), indexes)
  }
  writeDefaultLook(field, entry.size_pt, form, fonts)
}

/** A field that a person goes on filling in a viewer needs a font that the form has. */
function writeDefaultLook(field: FormField, sizePt: number | undefined, form: OpenForm, fonts: FormFonts): void {
  for (const dict of new Set([...field.dicts, ...field.widgets.map((widget) => widget.dict)])) {
    const own = textOf(valueOf(dict, 'DA'))
    if (own === undefined && !field.dicts.includes(dict)) continue
    const look = readDefaultLook(own ?? field.defaultLook)
    if (sizePt === undefined && fonts.has(look.fontName)) continue
    const fontName = fonts.has(look.fontName) ? look.fontName : plainFont(form)
    dict.set(PDFName.of('DA'), PDFString.of(`/${fontName} ${sizePt ?? look.sizePt} Tf ${look.colour}`))
  }
}

/** Name of a plain font among the resources of the form, which is added where there is none. */
function plainFont({ acroForm }: OpenForm): string {
  const { context } = acroForm
  const resources = dictOf(acroForm, 'DR') ?? context.obj({})
  const fonts = dictOf(resources, 'Font') ?? context.obj({})
  acroForm.set(PDFName.of('DR'), resources)
  resources.set(PDFName.of('Font'), fonts)
  if (!(valueOf(fonts, 'Helv') instanceof PDFDict)) {
    const font = { Type: 'Font', Subtype: 'Type1', BaseFont: 'Helvetica', Encoding: 'WinAnsiEncoding' }
    fonts.set(PDFName.of('Helv'), context.register(context.obj(font)))
  }
  return 'Helv'
}

/** @source ISO 32000-1:2008, 12.7.4.2.3 (check boxes), 12.7.4.2.4 (radio buttons); from memory. */
function writeState(field: FormField, state: FieldState | undefined): void {
  for (const dict of field.dicts) dict.set(PDFName.of('V'), state?.pdfName ?? OFF)
  for (const widget of field.widgets) {
    const isOn = state !== undefined && widget.state?.name === state.name
    widget.dict.set(PDFName.of('AS'), isOn ? state.pdfName : OFF)
  }
}

/** @source ISO 32000-1:2008, 12.7.4.4; from memory. */
function chosen(
  field: FormField,
  choices: FormField['choices'],
  { acroForm: { context } }: OpenForm,
): [PDFObject, PDFObject | undefined] {
  const values = choices.map(({ value }) => pdfText(value))
  const [first] = values
  const value = values.length === 1 && first !== undefined ? first : context.obj(values)
  if (field.kind !== 'list') return [value, undefined]
  const indexes = choices.map((choice) => field.choices.indexOf(choice))
  return [value, context.obj(indexes.filter((index) => index >= 0))]
}
