export {
  FAIMAN,
  INSTALLED_NOCT,
  MOUNTING_COEFFICIENTS,
  MOUNTING_SOURCE,
  type MountingCoefficients,
} from './cell-temperature.js'
