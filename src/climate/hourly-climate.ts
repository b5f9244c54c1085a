import { StageError, type Finding, type Worksheet } from '../worksheet/index.js'
import { checkClock } from './check-clock.js'
import { checkEpwLocation } from './check-epw-location.js'
import { clockShift } from './clock-shift.js'
import { EPW_PATH } from './epw-error.js'
import type { House } from './house.js'
import { parseEpw } from './parse-epw.js'
import type { HourlyClimate } from './types.js'

/**
 * Climate of a house from an hourly weather file, with every check of the file.
 *
 * @param text The EPW file.
 * @param house Place of the house.
 * @param worksheet Takes what is doubtful: gaps, a far or high place, a clock that disagrees with the sun.
 * @param clockShiftH Hours to add to the stamps, or `auto` for what the sun shows; as stamped when undefined.
 * @param path Where the project names the file.
 * @throws StageError as `parseEpw`.
 */
export function hourlyClimate(
  text: string,
  house: House,
  worksheet: Worksheet,
  clockShiftH?: number | 'auto',
  path: string = EPW_PATH,
): HourlyClimate {
  const named = (finding: Finding): Finding => (finding.where === EPW_PATH ? { ...finding, where: path } : finding)
  const file = readAt(path, text)
  for (const finding of file.findings) worksheet.find(named(finding))
  for (const assumption of file.assumptions) worksheet.assume(assumption)
  checkEpwLocation(file.location, house, worksheet, path)
  const climate = clockShiftH === undefined ? file.climate : moved(file.climate, clockShiftH, worksheet)
  checkClock(climate, worksheet, path)
  return climate
}

function readAt(path: string, text: string): ReturnType<typeof parseEpw> {
  try {
    return parseEpw(text)
  } catch (error) {
    if (error instanceof StageError && error.where === EPW_PATH) throw new StageError(path, error.message, error.fix)
    throw error
  }
}

/** The same hours with their stamps moved, told. */
function moved(climate: HourlyClimate, asked: number | 'auto', worksheet: Worksheet): HourlyClimate {
  const shiftH = asked === 'auto' ? clockShift(climate).shiftH : asked
  worksheet.find({
    severity: 'note',
    id: 'climate.clock-moved',
    message: `the stamps of the weather file were moved by ${shiftH < 0 ? '' : '+'}${shiftH.toFixed(2)} h, as ${asked === 'auto' ? 'the sun shows' : 'the project states'}`,
    where: 'site.climate.clock_shift_h',
  })
  return shiftH === 0 ? climate : { ...climate, middleH: climate.middleH.map((middle) => middle + shiftH) }
}
