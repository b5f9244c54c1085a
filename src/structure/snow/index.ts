export { flatRoofSnowPsf, slopedRoofSnowPsf, snowSlopeFactor, type SnowOnRoof } from './snow-load.js'
export { mostSnowPsf, snowAtPsf, type SnowCase, type SnowPiece } from './snow-case.js'
