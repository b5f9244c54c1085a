import type { ModulePlacement } from '../../roof/index.js'
import type { PlaneGeometry } from './plane-geometry.js'

/** Where the modules lie, and the planes they lie on. */
export interface RoofArrangement {
  readonly planes: readonly PlaneGeometry[]
  readonly modules: readonly ModulePlacement[]
}
