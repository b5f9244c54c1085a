import type { WiringSegment } from '../../project/index.js'
import type { Circuit } from '../system/index.js'

/** One raceway with all circuits in it. */
export interface RacewaySegment {
  /** `<run>.<segment>` */
  readonly id: string
  readonly run: string
  readonly where: string
  /** Path of the key that names the size of its conductors. */
  readonly sizeWhere: string
  /** Path of the key that states its length. */
  readonly lengthWhere: string
  readonly stated: WiringSegment
  readonly circuits: readonly Circuit[]
  readonly neutral: boolean
}
