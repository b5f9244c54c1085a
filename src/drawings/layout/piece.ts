import type { Primitive } from '../model/index.js'

/** A piece that stays whole: its height and how it is drawn. */
export interface Piece {
  readonly heightPt: number
  /** Space above it unless it comes first in its column. */
  readonly gapPt: number
  /** Whether it starts a column. */
  readonly breaks?: boolean
  /** Whether the next piece must follow in the same column. */
  readonly keep?: boolean
  /** Repeated at the top of the next column when a table goes on there. */
  readonly header?: Piece | undefined
  readonly draw: (x: number, y: number) => readonly Primitive[]
}
