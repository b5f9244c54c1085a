import { PDFName, type PDFDict, type PDFDocument, type PDFObject } from '@cantoo/pdf-lib'
import { numbersOf } from '../../../packet/pages/index.js'
import { FIELD_FLAG, hasFlag, WIDGET_FLAG } from './field-flags.js'
import type { FieldChoice, FieldKind, FieldState, FormField, FormWidget } from './form-field.js'
import { collectLeaves, type Leaf } from './field-tree.js'
import { dictOf, dictsOf, listOf, nameText, numberOf, textOf, valueOf } from './pdf-object.js'

/** All fields of a form in the order of its tree. */
export function readFields(pdf: PDFDocument, acroForm: PDFDict): FormField[] {
  const pageOf = pagesOfWidgets(pdf)
  const calculated = new Set(listOf(valueOf(acroForm, 'CO'), pdf.context))
  const byName = new Map<string, Leaf[]>()
  for (const leaf of collectLeaves(acroForm)) byName.set(leaf.name, [...(byName.get(leaf.name) ?? []), leaf])
  return [...byName].map(([name, leaves]) => readField(name, leaves, acroForm, pageOf, calculated))
}

function readField(
  name: string,
  leaves: readonly Leaf[],
  acroForm: PDFDict,
  pageOf: ReadonlyMap<PDFDict, number>,
  calculated: ReadonlySet<PDFObject | undefined>,
): FormField {
  const [first] = leaves
  if (first === undefined) throw new Error('a name without a field')
  const { context } = acroForm
  const of = (key: string): PDFObject | undefined => first.inherited(key)
  const flags = numberOf(of('Ff')) ?? 0
  const has = (bit: number): boolean => hasFlag(flags, bit)
  const kind = kindOf(textOf(of('FT')), has)
  const isText = kind === 'text'
  const isChoice = kind === 'drop-down' || kind === 'list'
  const optionTexts = kind === 'check box' || kind === 'radio' ? listOf(of('Opt'), context).map(textOf) : []
  const widgets = leaves
    .flatMap((leaf) => leaf.widgets)
    .map((dict, index): FormWidget => readWidget(dict, pageOf.get(dict), optionTexts[index]))
  const states = new Map(widgets.flatMap(({ state }) => (state === undefined ? [] : [[state.name, state]])))
  const maxLength = isText ? numberOf(of('MaxLen')) : undefined
  const align = numberOf(of('Q')) ?? numberOf(valueOf(acroForm, 'Q'))
  const value = of('V')
  const values = [value, ...listOf(value, context)].flatMap((each) => textOf(each) ?? [])
  return {
    name,
    kind,
    dicts: leaves.map((leaf) => leaf.dict),
    widgets,
    tooltip: textOf(of('TU')),
    required: has(FIELD_FLAG.required),
    readOnly: has(FIELD_FLAG.readOnly),
    multiline: isText && has(FIELD_FLAG.multiline),
    // Without a length there is nothing to spread the characters over.
    comb: isText && has(FIELD_FLAG.comb) && maxLength !== undefined && !has(FIELD_FLAG.multiline),
    password: isText && has(FIELD_FLAG.password),
    fileSelect: isText && has(FIELD_FLAG.fileSelect),
    editable: kind === 'drop-down' && has(FIELD_FLAG.edit),
    multiSelect: kind === 'list' && has(FIELD_FLAG.multiSelect),
    maxLength: maxLength !== undefined && maxLength > 0 ? Math.floor(maxLength) : undefined,
    states: isChoice || isText ? [] : [...states.values()],
    choices: isChoice ? listOf(of('Opt'), context).flatMap((each) => choiceOf(each, acroForm)) : [],
    value: values.filter((text) => text !== '' && text !== 'Off'),
    defaultLook: textOf(of('DA')) ?? textOf(valueOf(acroForm, 'DA')) ?? '',
    alignment: align === 1 || align === 2 ? align : 0,
    calculated: leaves.some(({ dict }) => calculated.has(dict)),
  }
}

function kindOf(type: string | undefined, has: (bit: number) => boolean): FieldKind {
  if (type === 'Tx') return 'text'
  if (type === 'Ch') return has(FIELD_FLAG.combo) ? 'drop-down' : 'list'
  if (type === 'Sig') return 'signature'
  if (type !== 'Btn') return 'of no known type'
  if (has(FIELD_FLAG.pushButton)) return 'push button'
  return has(FIELD_FLAG.radio) ? 'radio' : 'check box'
}

function readWidget(dict: PDFDict, page: number | undefined, text: string | undefined): FormWidget {
  const rect = numbersOf(dict.get(PDFName.of('Rect')), 4, dict.context)
  const [a = 0, b = 0, c = 0, d = 0] = rect ?? []
  const flags = numberOf(valueOf(dict, 'F')) ?? 0
  return {
    dict,
    page,
    rect: rect && [Math.min(a, c), Math.min(b, d), Math.max(a, c), Math.max(b, d)],
    state: onState(dict, text),
    unseen: hasFlag(flags, WIDGET_FLAG.hidden) || hasFlag(flags, WIDGET_FLAG.noView),
  }
}

/** The state that a button shows when it is on: the look that is not called Off. */
function onState(dict: PDFDict, text: string | undefined): FieldState | undefined {
  const looks = dictOf(dict, 'AP')
  const normal = looks === undefined ? undefined : dictOf(looks, 'N')
  const pdfName = normal?.keys().find((key) => nameText(key) !== 'Off')
  return pdfName === undefined ? undefined : { name: nameText(pdfName), pdfName, text }
}

function choiceOf(value: PDFObject | undefined, acroForm: PDFDict): FieldChoice[] {
  const [exported, shown] = listOf(value, acroForm.context).map(textOf)
  if (exported !== undefined) return [{ value: exported, text: shown ?? exported }]
  const text = textOf(value)
  return text === undefined ? [] : [{ value: text, text }]
}

/** Number of the page, from 1, that each annotation stands on. */
function pagesOfWidgets(pdf: PDFDocument): Map<PDFDict, number> {
  const pages = new Map<PDFDict, number>()
  for (const [index, page] of pdf.getPages().entries()) {
    for (const { dict } of dictsOf(valueOf(page.node, 'Annots'), pdf.context)) pages.set(dict, index + 1)
  }
  return pages
}
