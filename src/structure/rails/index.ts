export { layRails, type LaidRail, type LayoutRules, type RailToLay } from './lay-rails.js'
export type { LoadedRail } from './loaded-rail.js'
export { allowableBendingKsi, allowableShearKsi, type RailStrength } from './rail-capacity.js'
export { moduleKeys, railPatches, type ModuleKeys, type WindKey } from './rail-patches.js'
export { cutRail, jointPlaces, type RailCut, type RailPieces } from './rail-pieces.js'
export { spanLimit, type SpanLimit } from './span-limit.js'
export { railDemand, type RailDemand } from './rail-demand.js'
export {
  HINGE_SHARES,
  holdsThere,
  isForStrongOnly,
  spliceForces,
  type SpliceForces,
  type SpliceStrength,
} from './rail-splices.js'
