import type { Color } from '../model/index.js'
import type { Inches } from '../../values/index.js'

/** Part of a label: its own ground, ink and height of letters. */
export interface LabelPart {
  readonly text: string
  readonly ground: Color
  readonly ink: Color
  /** Height of capitals, in. */
  readonly capsIn: Inches
  /** Whether the section sets that height, or it is ours where the section is silent. */
  readonly heightBy: 'code' | 'usual'
  /** A small house with its array, instead of text. */
  readonly figure?: 'roof' | 'roof, array live'
}
