import type { FieldChoice } from '../document/index.js'
import type { LookFont } from './look-font.js'
import type { TextBox, TextLayout } from './text-layout.js'

const LEADING = 1.15
const USUAL_PT = 12

/** The lines of a list, and the grounds of those that are chosen. */
export interface ListLayout extends TextLayout {
  readonly chosen: readonly { readonly y: number; readonly heightPt: number }[]
  /** Number of the line at the top, from 0. */
  readonly top: number
}

/** Lays the choices of a list below each other, so that the first chosen one is seen. */
export function listLines(
  choices: readonly FieldChoice[],
  chosen: readonly string[],
  font: LookFont,
  box: TextBox,
): ListLayout {
  const sizePt = box.sizePt > 0 ? box.sizePt : USUAL_PT
  const linePt = LEADING * sizePt
  const roomPt = box.heightPt - 2 * box.paddingPt
  const seen = Math.max(1, Math.floor(roomPt / linePt + 0.01))
  const marked = choices.flatMap(({ text }, index) => (chosen.includes(text) ? [index] : []))
  const [first = 0] = marked
  const top = first < seen ? 0 : first
  const lowest = box.heightPt - box.paddingPt
  const shown = choices.slice(top, top + seen)
  const pieces = shown.map(({ text }, index) => ({
    text,
    x: box.paddingPt,
    y: lowest - index * linePt - ((LEADING + font.ascent - font.descent) / 2) * sizePt,
  }))
  const hidden = marked.filter((index) => index >= top + seen)
  const last = hidden.map((index) => `'${choices[index]?.text ?? ''}'`).join(', ')
  return {
    sizePt,
    pieces,
    top,
    chosen: marked
      .filter((index) => index >= top && index < top + seen)
      .map((index) => ({ y: lowest - (index - top + 1) * linePt, heightPt: linePt })),
    trouble: hidden.length === 0 ? undefined : `the list shows ${seen} lines, and ${last} would not be seen on paper`,
  }
}
