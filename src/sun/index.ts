export { airMass, airMassReader } from './air-mass.js'
export { dailyExtraterrestrialWhM2, diffuseShareOfDay, globalShareOfDay, sunsetHourAngleDeg } from './day-course.js'
export { erbsHourly } from './diffuse-fraction.js'
export { atDay, ephemeris, type Ephemeris } from './ephemeris.js'
export { eccentricityFactor, SOLAR_CONSTANT_W_M2 } from './extraterrestrial.js'
export { sunPosition, type SunPosition } from './position.js'
export {
  oneCoefficientModifier,
  cosDeg,
  effectiveGroundAngleDeg,
  effectiveSkyAngleDeg,
  glassLayerModifier,
} from './reflection.js'
export { hayDavies, isotropicSky, perez1990, type SkyBrightness, type SkyInstant, type SkyModel } from './sky.js'
export { dot, type Direction, type Point } from './direction.js'
export { horizonElevationDeg, type HorizonPoint } from './horizon.js'
export { planeAxes, type PlaneAxes } from './plane-axes.js'
export { trueAltitudeDeg } from './true-altitude.js'
