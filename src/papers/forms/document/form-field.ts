import type { PDFDict, PDFName } from '@cantoo/pdf-lib'

/** Kinds of fields as they are told. */
export type FieldKind =
  | 'text'
  | 'check box'
  | 'radio'
  | 'drop-down'
  | 'list'
  | 'push button'
  | 'signature'
  | 'of no known type'

/** A place of a field on a page. */
export interface FormWidget {
  readonly dict: PDFDict
  /** Counted from 1; undefined when it stands on no page. */
  readonly page: number | undefined
  /** Left, bottom, right, top; points. Undefined when the form does not say. */
  readonly rect: readonly [number, number, number, number] | undefined
  /** The state of a button that this widget shows when it is on, read from its appearances. */
  readonly state: FieldState | undefined
  /** Hidden, or not to be seen on a screen. */
  readonly unseen: boolean
}

/** A state of a check box or of radio buttons. */
export interface FieldState {
  readonly name: string
  readonly pdfName: PDFName
  /** What the form calls it beside the name, from `Opt`. */
  readonly text: string | undefined
}

/** A choice of a drop-down or a list. */
export interface FieldChoice {
  /** What is exported. */
  readonly value: string
  /** What is seen. */
  readonly text: string
}

/** A field of a form with all that it inherits. */
export interface FormField {
  /** Partial names of it and of those above it, joined by points. */
  readonly name: string
  readonly kind: FieldKind
  /** Its dictionaries: two fields of one name are one field. */
  readonly dicts: readonly PDFDict[]
  readonly widgets: readonly FormWidget[]
  /** Page, from 1, of a place that the mapping makes where the form has no field. */
  readonly placedOn?: number
  readonly tooltip: string | undefined
  readonly required: boolean
  readonly readOnly: boolean
  readonly multiline: boolean
  readonly comb: boolean
  readonly password: boolean
  readonly fileSelect: boolean
  /** A drop-down that takes text of its own. */
  readonly editable: boolean
  readonly multiSelect: boolean
  /** Longest text, characters. */
  readonly maxLength: number | undefined
  readonly states: readonly FieldState[]
  readonly choices: readonly FieldChoice[]
  /** What stands in it; `Off` counts as nothing. */
  readonly value: readonly string[]
  /** Font, size and colour as the form asks for them. */
  readonly defaultLook: string
  /** 0 left, 1 centre, 2 right. */
  readonly alignment: 0 | 1 | 2
  /** Whether a script of the form works its value out. */
  readonly calculated: boolean
}
