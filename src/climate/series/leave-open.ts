import type { Measured } from './quality.js'
import type { RepairedRadiation } from './repair-radiation.js'
import type { RepairedWeather } from './repair-weather.js'

interface Repaired {
  readonly radiation: RepairedRadiation
  readonly weather: RepairedWeather
}

/**
 * Takes gaps that cannot be filled off the list of what is refused, where only some days of a year are wanted: they keep no light. Air
 * temperature that is missing in an interval with light measured stays refused, as the energy of that day would be made up.
 */
export function leaveOpen({ radiation, weather }: Repaired, measured: Measured): Repaired {
  const isLit = (row: number): boolean =>
    [measured.ghi, measured.dni, measured.dhi].some((column) => column !== undefined && !Number.isNaN(column[row]!))
  const { temperature } = weather
  const known = weather.dryBulbC.filter((value) => !Number.isNaN(value))
  const mean = known.reduce((sum, value) => sum + value, 0) / known.length
  const dryBulbC = weather.dryBulbC.map((value) => (Number.isNaN(value) && known.length > 0 ? mean : value))
  return {
    radiation: { ...radiation, gaps: { ...radiation.gaps, open: [] } },
    weather: { ...weather, dryBulbC, temperature: { ...temperature, open: temperature.open.filter(isLit) } },
  }
}
