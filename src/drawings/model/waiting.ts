import type { PlacedText } from './expand.js'
import type { Box } from './geometry.js'
import type { TextMark } from './mark.js'

/** A text that waits for its place, and the part of the paper that it must keep to. */
export interface Waiting extends PlacedText {
  readonly within: Box
  readonly belongs: Belonging
}

/** Where on the sheet a mark belongs, beside its layer. */
export type Belonging = Pick<TextMark, 'view' | 'part' | 'tag' | 'order'>
