import type { Worksheet } from '../worksheet/index.js'
import { checkClock } from './check-clock.js'
import { checkEpwLocation } from './check-epw-location.js'
import type { House } from './house.js'
import { parseEpw } from './parse-epw.js'
import type { HourlyClimate } from './types.js'

/**
 * Climate of a house from an hourly weather file, with every check of the file.
 *
 * @param text The EPW file.
 * @param house Place of the house.
 * @param worksheet Takes what is doubtful: gaps, a far or high place, a clock that disagrees with the sun.
 * @throws StageError as `parseEpw`.
 */
export function hourlyClimate(text: string, house: House, worksheet: Worksheet): HourlyClimate {
  const file = parseEpw(text)
  for (const finding of file.findings) worksheet.find(finding)
  for (const assumption of file.assumptions) worksheet.assume(assumption)
  checkEpwLocation(file.location, house, worksheet)
  checkClock(file.climate, worksheet)
  return file.climate
}
