import type { HourlyClimate } from '../climate/index.js'
import { radiansOf, type Degrees } from '../values/index.js'

/**
 * Snow on modules hour by hour: a snowfall covers them, and on hours that are warm or sunny enough the snow slides down.
 *
 * @param climate Hourly weather with snow depth; -1 where the file does not know it.
 * @param planeWM2 Light on the unshaded plane by row of the file, W/m2.
 * @param tiltDeg Tilt of the modules, degrees.
 * @param rows Module rows up the slope: a row that is partly covered counts as covered; undefined = cover in proportion.
 * @returns Share of the modules covered, by row of the file.
 * @source Marion, Schaefer, Caine & Sanchez 2013, Solar Energy 97:112-121: slides when air temperature exceeds
 *   light/(-80 W/m2/K), by 0.197 of the slant height an hour on a roof times sin(tilt) (constants from memory,
 *   unverified); a snowfall is a rise of depth by 1 cm or more in an hour.
 */
export function snowCover(
  climate: HourlyClimate,
  planeWM2: Float64Array,
  tiltDeg: Degrees,
  rows: number | undefined,
): Float64Array {
  const share = new Float64Array(climate.length)
  const slide = 0.197 * Math.sin(radiansOf(tiltDeg)) * climate.stepH
  const rowsPerHour = Math.round(1 / climate.stepH)
  let covered = 0
  for (let row = 0; row < climate.length; row += 1) {
    const depth = climate.snowDepthCm[row]!
    const before = climate.snowDepthCm[(row - rowsPerHour + climate.length) % climate.length]!
    if (depth >= 0 && before >= 0 && depth - before >= 1) covered = 1
    else if (covered > 0 && climate.dryBulbC[row]! > planeWM2[row]! / -80) {
      covered = Math.max(0, covered - slide)
    }
    if (depth === 0) covered = 0
    share[row] = rows === undefined ? covered : Math.ceil(covered * rows - 1e-9) / rows
  }
  return share
}
