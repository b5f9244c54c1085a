export { beamExtremes, type BeamExtremes } from './beam-shape.js'
export { solveContinuousBeam, type BeamModel, type BeamSolution, type LineLoad } from './continuous-beam.js'
