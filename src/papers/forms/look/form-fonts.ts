import { PDFDict, PDFName, type PDFDocument } from '@cantoo/pdf-lib'
import { dictOf, textOf, valueOf } from '../document/index.js'
import { embeddedFont } from './embedded-font.js'
import type { LookFont } from './look-font.js'
import { standardFont, standardNameFor } from './standard-font.js'

/** The fonts of one filled form, each made when it is first wanted. */
export class FormFonts {
  readonly #pdf: PDFDocument
  readonly #fonts: PDFDict | undefined
  readonly #standard = new Map<string, LookFont>()
  #embedded: ReturnType<typeof embeddedFont> | undefined

  constructor(pdf: PDFDocument, acroForm: PDFDict) {
    this.#pdf = pdf
    const resources = dictOf(acroForm, 'DR')
    this.#fonts = resources === undefined ? undefined : dictOf(resources, 'Font')
  }

  /** Whether the form has a font of that name among its resources. */
  has(fontName: string): boolean {
    return fontName !== '' && this.#fonts?.has(PDFName.of(fontName)) === true
  }

  /**
   * The font for a text where the form asks for `fontName`: the standard font that comes nearest, or the one of the
   * drawings where that lacks a character.
   */
  fontFor(fontName: string, text: string): LookFont {
    const asked = this.has(fontName) ? this.#fonts?.lookup(PDFName.of(fontName)) : undefined
    const baseFont = asked instanceof PDFDict ? (textOf(valueOf(asked, 'BaseFont')) ?? '') : ''
    const name = standardNameFor(baseFont)
    const standard = this.#standard.get(name) ?? standardFont(this.#pdf, name)
    this.#standard.set(name, standard)
    if (standard.missing(text).length === 0) return standard
    this.#embedded ??= embeddedFont(this.#pdf.context)
    return this.#embedded
  }

  /** Puts into the file what is known only after all texts are drawn. */
  finish(): void {
    this.#embedded?.finish()
  }
}
