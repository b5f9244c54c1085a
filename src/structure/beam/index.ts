export { beamExtremes, beamForcesAt, type BeamExtremes } from './beam-shape.js'
export { hingedBeam } from './hinged-beam.js'
export {
  solveContinuousBeam,
  type BeamKink,
  type BeamModel,
  type BeamSolution,
  type LineLoad,
} from './continuous-beam.js'
