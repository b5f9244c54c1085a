import type { CombinedLoad } from '../loads/combine-loads.js'
import type { MountStrength } from '../mounts/mount-capacity.js'
import type { RailStrength } from './rail-capacity.js'
import type { RailLine } from './rail-lines.js'
import type { RailPatch } from './rail-patches.js'
import type { WindOnPlane } from '../wind/wind-pressure.js'

/** A rail with all that loads and resists it. */
export interface LoadedRail {
  readonly line: RailLine
  readonly patches: readonly RailPatch[]
  readonly wind: WindOnPlane
  readonly combinations: readonly CombinedLoad[]
  readonly mount: MountStrength
  readonly strength: RailStrength
}
