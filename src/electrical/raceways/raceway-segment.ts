import type { WiringSegment } from '../../project/index.js'
import type { Circuit } from '../system/index.js'
import type { Feet, Inches } from '../../values/index.js'

/** A segment as the project states it, its length in feet. */
export type StatedSegment = Omit<WiringSegment, 'length_ft'> & { readonly length_ft: Feet }

/** One raceway with all circuits in it, or the cables of all circuits side by side. */
export interface RacewaySegment {
  /** `<run>.<segment>` */
  readonly id: string
  readonly run: string
  readonly where: string
  /** Path of the key that names the size of its conductors. */
  readonly sizeWhere: string
  /** Path of the key that states its length. */
  readonly lengthWhere: string
  readonly stated: StatedSegment
  readonly circuits: readonly Circuit[]
  readonly neutral: boolean
  /** Length between boxes with that of the neighbours behind conduit bodies, in. */
  readonly developedIn: Inches
}
