import type { Color } from '../model/index.js'

/** Part of a label: its own ground, ink and height of letters. */
export interface LabelPart {
  readonly text: string
  readonly ground: Color
  readonly ink: Color
  /** Height of capitals, in. */
  readonly capsIn: number
  /** Lines that are filled in at the place, or a small roof plan. */
  readonly figure?: 'roof'
}

const part = (text: string, ground: Color, ink: Color, capsIn: number): LabelPart => ({ text, ground, ink, capsIn })

/** Heights of capitals that the code sets, in. @source NEC 2017 and 2020 690.56(C), 690.31 */
const LARGE_IN = 3 / 8
const BODY_IN = 3 / 16
/** Height where the code sets none, in. */
const USUAL_IN = 3 / 16

/** White on red. */
export const red = (text: string): LabelPart => part(text, 'red', 'white', LARGE_IN)
/** Title of the rapid shutdown placard. */
export const yellowTitle = (text: string): LabelPart => part(text, 'yellow', 'black', LARGE_IN)
/** Text of the rapid shutdown placard. */
export const placardText = (text: string): LabelPart => part(text, 'white', 'black', BODY_IN)
/** Signal word over an orange field. */
export const warning = (text: string): LabelPart[] => [
  part('WARNING', 'orange', 'black', LARGE_IN),
  part(text, 'white', 'black', USUAL_IN),
]
/** Signal word over a yellow field. */
export const caution = (text: string): LabelPart[] => [part(`CAUTION: ${text}`, 'yellow', 'black', LARGE_IN)]
/** Plain engraved or printed text. */
export const plain = (text: string): LabelPart => part(text, 'white', 'black', USUAL_IN)
/** White on black, for names of devices. */
export const name = (text: string): LabelPart => part(text, 'black', 'white', 1 / 4)
