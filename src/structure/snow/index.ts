export { flatRoofSnowPsf, slopedRoofSnowPsf, snowSlopeFactor, type SnowOnRoof } from './snow-load.js'
