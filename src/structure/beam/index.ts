export { beamLines, type BeamLines } from './beam-lines.js'
export { beamExtremes, beamForcesAt, type BeamExtremes } from './beam-shape.js'
export { stationAt, stationsOf } from './beam-walk.js'
export { hingedBeam } from './hinged-beam.js'
export {
  solveContinuousBeam,
  type BeamKink,
  type BeamModel,
  type BeamSolution,
  type LineLoad,
} from './continuous-beam.js'
