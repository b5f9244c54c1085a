export { collectChecks, type PartCheck } from './collect-checks.js'
export type {
  CheckValue,
  FastenerValue,
  LagValues,
  MountValue,
  MountValues,
  PlaneLoadsValues,
  RafterCodePath,
  RafterValue,
  RailValue,
  SpliceValue,
  ZoneLoads,
} from './mount-values.js'
export { need } from './need.js'
export {
  inPlan,
  isInPlane,
  isNearEdge,
  planDepthFt,
  planEdges,
  planeAreaFt2,
  type PlaneEdgeKind,
  type PlaneGeometry,
  type PlanePoint,
} from './plane-geometry.js'
export type { RoofArrangement } from './roof-arrangement.js'
export type { PlaneSnowValues, SnowCaseValues, SnowValues } from './snow-values.js'
export type { SeismicValues } from './seismic-values.js'
