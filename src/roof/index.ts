export { arrangeModules } from './arrange-modules.js'
export type { ArrangedPlane, Arrangement } from './arrangement.js'
export { fitRankOf, withRank, type FitAlternative } from './fit-alternative.js'
export type { FitRank } from './ranked-fits.js'
export { fireClassFindings } from './fire-class.js'
export { cutRafters } from './cut-rafters.js'
export type { KeepOut } from './keep-out.js'
export type { Pathway } from './pathways.js'
export { moduleName, type ModulePlacement } from './placement.js'
export { placeModules } from './place-modules.js'
export type { EdgeKind, PlaneEdge } from './plane-edge.js'
export {
  boxCorners,
  containsPoint,
  distanceBetweenFt,
  distanceToSegmentFt,
  reachBetween,
  signedAreaFt2,
  type Box,
  type Point,
} from '../values/index.js'
export { continuousRailFt, staggerRails } from './rail-ground.js'
export {
  isOnPlane,
  rafterNumber,
  rafterPlaces,
  type MountField,
  type RafterGrid,
  type RafterLine,
} from './rafter-lines.js'
export { railEndIn } from './rail-end.js'
export { breakGapIn, railInsetIn, railLines, railOnObstructionIn, type ClampZone, type RailLine } from './rail-lines.js'
export {
  fewestOnRafters,
  freeEndFits,
  MOUNT_CLEARANCE_IN,
  MOUNT_EDGE_IN,
  railRules,
  sheetSpanIn,
  type RailRules,
} from './rail-rules.js'
export { roofSurface, type RoofSurface } from './roof-surface.js'
export { moduleCentresFt, rowsOf, type ModuleCentre, type ModuleRow } from './rows-of.js'
export { textPlan, type PlanMark } from './text-plan.js'
export { countFitted } from './count-fitted.js'
export { ratedAcKw } from './rated-ac-kw.js'
