export { beamLines, type BeamLines } from './beam-lines.js'
export { beamExtremes, type BeamExtremes } from './beam-shape.js'
export { stationAt, stationsOf } from './beam-walk.js'
export { solveContinuousBeam, type BeamModel, type BeamSolution, type LineLoad } from './continuous-beam.js'
