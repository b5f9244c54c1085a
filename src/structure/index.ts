export {
  beamExtremes,
  beamForcesAt,
  hingedBeam,
  solveContinuousBeam,
  type BeamExtremes,
  type BeamKink,
  type BeamModel,
  type BeamSolution,
  type LineLoad,
} from './beam/index.js'
export {
  centringToleranceIn,
  combinedCapacityLb,
  lateralReferenceLb,
  leadHoleIn,
  penetrationIn,
  penetrationShare,
  threadInRafterIn,
  withdrawalPerInchLb,
  type LagInRafter,
} from './fasteners/index.js'
export { combinedLoads, gravityChangePct, type CombinedLoad, type GravityInput } from './loads/index.js'
export {
  isInPlane,
  type CheckValue,
  type MountValue,
  type MountValues,
  type PlaneGeometry,
  type PlanePoint,
  type RailValue,
  type SpliceValue,
  type RoofArrangement,
  type ZoneLoads,
} from './model/index.js'
export {
  allLayouts,
  evenLayout,
  fewestMounts,
  lagCapacity,
  mountChecks,
  optimisedMounts,
  type LayoutProblem,
  type MountStrength,
} from './mounts/index.js'
export type { SpaceMountsOptions } from './planes/index.js'
export {
  bendingStrength,
  checkRafters,
  prescriptiveSpanFt,
  rafterMoment,
  raftersAt,
  type BendingStrength,
  type RafterInput,
  type RafterLoad,
  type RafterPlace,
  type RafterSpans,
} from './rafters/index.js'
export {
  allowableBendingKsi,
  allowableShearKsi,
  cutRail,
  holdsThere,
  isForStrongOnly,
  type RailCut,
  type RailPieces,
  type SpliceForces,
  type SpliceStrength,
} from './rails/index.js'
export { flatRoofSnowPsf, slopedRoofSnowPsf, snowSlopeFactor, type SnowOnRoof } from './snow/index.js'
export { railGrowthIn, railRangeF } from './report/index.js'
export { spaceMounts } from './space-mounts.js'
export {
  LARGEST_AREA_FT2,
  arrayEdgeFactor,
  edgeStripWidthFt,
  elevationFactor,
  exposedStrips,
  exposureCoefficient,
  pressureCoefficient,
  solarEqualisation,
  velocityPressurePsf,
  windPressurePsf,
  zoneAt,
  zoneNames,
  type ExposedStrip,
  type ExposureInput,
  type RoofShape,
  type WindExposure,
  type WindOnPlane,
} from './wind/index.js'
