import type { Amperes } from '../../values/index.js'

/** Sources as a panel sees them. */
export interface Sources {
  readonly inverterA: Amperes
  readonly breakersA: readonly Amperes[]
  readonly firstBreakersA: Amperes
}
