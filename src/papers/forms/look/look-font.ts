import type { PDFRef } from '@cantoo/pdf-lib'

/** A font that texts of fields are drawn in. Heights are shares of the size. */
export interface LookFont {
  readonly ref: PDFRef
  readonly ascent: number
  /** Below the baseline, positive. */
  readonly descent: number
  /** Characters of a text that it lacks, each once. */
  readonly missing: (text: string) => string[]
  /** Width of a line, points. */
  readonly widthPt: (text: string, sizePt: number) => number
  /** The operand of the operator that shows a line. */
  readonly encode: (text: string) => string
}

/** Characters that a font lacks, each once; line ends are no characters. */
export function lackedBy(has: (character: string) => boolean, text: string): string[] {
  return [...new Set(Array.from(text).filter((character) => character !== '\n' && !has(character)))]
}
