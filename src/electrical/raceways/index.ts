export { checkExpansion } from './check-expansion.js'
export {
  chooseRaceway,
  judgeRaceway,
  racewayTableKind,
  type RacewayKind,
  type RacewayVerdict,
} from './choose-raceway.js'
export type { ConductorCover } from './conductor-cover.js'
export { placeCableClips, placeStraps, type Straps } from './place-straps.js'
export { lengthChangeIn, needsExpansionFitting } from './pvc-movement.js'
export type { RacewaySegment, StatedSegment } from './raceway-segment.js'
export { resolveRuns } from './resolve-runs.js'
export { checkDrawnRoute } from './segment-length.js'
export { segmentConditions, type SegmentConditions } from './segment-conditions.js'
export { fillRaceway, lineAreaIn2, racewayGround, type RacewayContents } from './size-raceway.js'
export { supplyTapMaterial } from './supply-tap-segment.js'
export { isCable, isMetal, methodRow } from './wiring-method.js'
