import type { Color } from '../model/index.js'

/** Part of a label: its own ground, ink and height of letters. */
export interface LabelPart {
  readonly text: string
  readonly ground: Color
  readonly ink: Color
  /** Height of capitals, in. */
  readonly capsIn: number
  /** Whether the section sets that height, or it is ours where the section is silent. */
  readonly heightBy: 'code' | 'usual'
  /** A small house with its array, instead of text. */
  readonly figure?: 'roof' | 'roof, array live'
}
