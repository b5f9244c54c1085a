import { PDFName } from '@cantoo/pdf-lib'
import type { FieldState, FormField } from '../document/index.js'
import { MARKED, type MappedPlace } from '../mapping/index.js'

const STATE: FieldState = { name: MARKED, pdfName: PDFName.of(MARKED), text: undefined }

/** A place as a field of its kind, so that what goes into it is found as for the fields of a form. */
export function placeField({ name, page, mark, lines = 1 }: MappedPlace): FormField {
  return {
    name,
    kind: mark === true ? 'check box' : 'text',
    dicts: [],
    widgets: [],
    placedOn: page,
    tooltip: undefined,
    required: false,
    readOnly: false,
    multiline: lines > 1,
    comb: false,
    password: false,
    fileSelect: false,
    editable: false,
    multiSelect: false,
    maxLength: undefined,
    states: mark === true ? [STATE] : [],
    choices: [],
    value: [],
    defaultLook: '',
    alignment: 0,
    calculated: false,
  }
}
