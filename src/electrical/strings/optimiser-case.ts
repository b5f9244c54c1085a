import type { Inverter } from '../../project/index.js'
import type { OptimiserFacts, StringFacts } from '../system/index.js'

/** A string with converters and all that it is held against. */
export interface OptimiserCase {
  readonly id: string
  readonly where: string
  readonly string: StringFacts
  readonly optimiser: OptimiserFacts
  readonly inverterId: string
  readonly inverter: Inverter
}
