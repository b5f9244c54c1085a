export { driftHeightFt, snowDensityPcf, type DriftingSnow } from './drift-height.js'
export { planeSnowCases, type PlaneSnow } from './plane-snow-cases.js'
export { slidesOff, slidingSnow, stripBelowPsf, type SlidingSnow, type StripBelow } from './sliding-snow.js'
export { flatRoofSnowPsf, slopedRoofSnowPsf, snowSlopeFactor, type SlopeSurface, type SnowOnRoof } from './snow-load.js'
export { mostSnowBetweenPsf, mostSnowPsf, scaledSnow, snowAtPsf, type SnowCase, type SnowPiece } from './snow-case.js'
export type { HigherRoof, Parapet, PlaneEnd, SnowKind, SnowOnPlane, WorkedSnow } from './snow-on-plane.js'
export {
  stepDrifts,
  wallDrifts,
  type DriftsAtWall,
  type RoofStep,
  type RoofWall,
  type SnowDrift,
} from './step-drift.js'
export { insulatedRoofThermal } from './thermal-factor.js'
export {
  isUnbalancedSlope,
  unbalancedForms,
  unbalancedSnow,
  type RidgeSnow,
  type UnbalancedForms,
  type UnbalancedSnow,
} from './unbalanced-snow.js'
export { minimumSnowPsf, rainOnSnowPsf } from './uniform-snow.js'
