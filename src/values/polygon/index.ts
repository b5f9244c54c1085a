export {
  boxCorners,
  containsPoint,
  convexOverlap,
  crossingEdges,
  distanceBetweenFt,
  distanceToSegmentFt,
  reachBetween,
  segmentsOf,
  signedAreaFt2,
  TOLERANCE_FT,
  type Box,
  type Point,
} from './polygon.js'
