import { airMassReader, dot, perez1990, planeAxes, type Direction, type SkyBrightness } from '../../sun/index.js'
import { degreesOf } from '../../values/index.js'
import { splitGlobal } from './components.js'
import type { RowSun } from './row-sun.js'
import type { SensorPlane } from './series-file.js'

/** Light that the ground before the sensor throws back; grass. */
export const SENSOR_ALBEDO = 0.2
/** Global radiation is looked for up to this share of the sun above the air: hours under broken clouds reach it. */
const MOST_CLEARNESS = 1.1
/** Steps in which the first crossing is looked for, and halvings of the step that holds it. */
const STEPS = 44
const HALVINGS = 24

/**
 * Global radiation on the level that makes what a sensor in a plane has measured: split by the correlation for global radiation, put on the
 * plane by the sky model of the estimate. So the plane of the sensor gets in the estimate what was measured.
 *
 * @param planeWM2 Measured, mean of the interval; NaN where missing.
 * @source the same correlation (Erbs 1982) and sky (Perez 1990) as the estimate's, turned round by halving
 * @limits Where the sun stands behind the sensor two skies may give the same light; the duller is taken. A sensor of silicon reads a few per cent
 *   less at slanting light than this takes it to.
 */
export function globalOfPlane(planeWM2: Float64Array, plane: SensorPlane, sun: RowSun): Float64Array {
  const { normal } = planeAxes(plane.tiltDeg, plane.azimuthDeg)
  const lightOn = planeReader(normal)
  return planeWM2.map((measured, row) => {
    if (Number.isNaN(measured) || sun.sunlit[row] === 0) return measured
    const place: SunOfRow = {
      direction: { east: sun.sunEast[row]!, north: sun.sunNorth[row]!, up: sun.cosZenith[row]! },
      normalWM2: sun.normalWM2[row]!,
    }
    const most = MOST_CLEARNESS * place.normalWM2 * place.direction.up
    const step = most / STEPS
    if (measured <= 0 || step <= 0) return Math.max(0, measured)
    let high = step
    while (high < most && lightOn(high, place) < measured) high += step
    let low = high - step
    for (let round = 0; round < HALVINGS; round += 1) {
      const middle = (low + high) / 2
      if (lightOn(middle, place) < measured) low = middle
      else high = middle
    }
    return (low + high) / 2
  })
}

interface SunOfRow {
  readonly direction: Direction
  readonly normalWM2: number
}

/** Light on a plane from global radiation, W/m2. */
function planeReader(normal: Direction): (ghi: number, sun: SunOfRow) => number {
  const sky: SkyBrightness = { disc: 0, dome: 0, horizon: 0 }
  const airMassOf = airMassReader()
  const sinTilt = Math.sqrt(Math.max(0, 1 - normal.up ** 2))
  return (ghi, { direction, normalWM2 }) => {
    const cosZenith = direction.up
    const { dni, dhi } = splitGlobal(ghi, cosZenith, normalWM2)
    const zenithRad = Math.acos(Math.min(1, cosZenith))
    const airMass = airMassOf(degreesOf(zenithRad), cosZenith)
    perez1990(sky, { dniWM2: dni, dhiWM2: dhi, extraterrestrialWM2: normalWM2, airMass, zenithRad, cosZenith })
    const cosIncidence = Math.max(0, dot(direction, normal))
    const fromSky = Math.max(0, (sky.dome * (1 + normal.up)) / 2 + sky.horizon * sinTilt)
    return (dni + sky.disc) * cosIncidence + fromSky + (ghi * SENSOR_ALBEDO * (1 - normal.up)) / 2
  }
}
