import type { RailLine } from '../../roof/index.js'
import type { CombinedLoad } from '../loads/index.js'
import type { MountStrength } from '../mounts/index.js'
import type { RailStrength } from './rail-capacity.js'
import type { RailPatch } from './rail-patches.js'
import type { WindOnPlane } from '../wind/index.js'

/** A rail with all that loads and resists it. */
export interface LoadedRail {
  readonly line: RailLine
  readonly patches: readonly RailPatch[]
  readonly wind: WindOnPlane
  readonly combinations: readonly CombinedLoad[]
  readonly mount: MountStrength
  readonly strength: RailStrength
}
