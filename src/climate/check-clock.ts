import type { Worksheet } from '../worksheet/index.js'
import { clockShift, type ClockShift } from './clock-shift.js'
import { EPW_PATH } from './epw-error.js'
import type { HourlyClimate } from './types.js'

/** A smaller shift is lost in the noise of an hourly file, h. */
const LEAST_SHIFT_H = 0.1
/** The shifted clock must fit at least this much better to be believed. */
const CLEARLY_BETTER = 0.8
/** Half an hour of clock error alone gives 22 to 44 W/m2 in typical years; a sound file stays below 5. */
const POOR_CLOSURE_WM2 = 30

/** Tests the clock of a weather file against the sun and warns when it is wrong or its radiations disagree. */
export function checkClock(climate: HourlyClimate, worksheet: Worksheet, path: string = EPW_PATH): ClockShift {
  const shift = clockShift(climate)
  worksheet.step({
    id: 'climate.closure',
    says: 'How well direct, diffuse and global radiation of the weather file agree, the sun taken at mid-hour',
    formula: 'e = rms(DNI * cos z + DHI - GHI), GHI > 50 W/m2, cos z > 0.1, every third day',
    inputs: [{ symbol: 'GHI, DNI, DHI', value: climate.name, unit: 'W/m2', from: path }],
    result: { symbol: 'e', value: shift.rmsAsStampedWM2, unit: 'W/m2' },
    source: {
      document: 'Spencer 1971, Search 2:172',
      place: 'declination and equation of time',
      standing: 'from memory',
    },
  })
  const better = shift.rmsShiftedWM2 <= CLEARLY_BETTER * shift.rmsAsStampedWM2
  if (Math.abs(shift.shiftH) >= LEAST_SHIFT_H && better) {
    const direction = shift.shiftH > 0 ? 'early' : 'late'
    worksheet.find({
      severity: 'warning',
      id: 'climate.clock-shift',
      message: `the hours of the weather file look ${Math.abs(shift.shiftH).toFixed(2)} h too ${direction}: with stamps moved by ${signed(shift.shiftH)} h direct and diffuse radiation fit global within ${shift.rmsShiftedWM2.toFixed(1)} W/m2 instead of ${shift.rmsAsStampedWM2.toFixed(1)} W/m2`,
      where: path,
      fix: 'check that the file stamps the END of each hour in local STANDARD time, and its longitude and time zone; a shift moves yield between east and west roofs; site.climate.clock_shift_h: auto moves the stamps',
    })
  } else if (shift.rmsAsStampedWM2 > POOR_CLOSURE_WM2) {
    worksheet.find({
      severity: 'warning',
      id: 'climate.closure-poor',
      message: `direct and diffuse radiation of the weather file do not add up to global: rms difference ${shift.rmsAsStampedWM2.toFixed(1)} W/m2, a sound file stays below 5`,
      where: path,
      fix: 'use a file whose radiations come from one model or one instrument; direct and diffuse are used as they stand',
    })
  }
  return shift
}

function signed(hours: number): string {
  return `${hours < 0 ? '-' : '+'}${Math.abs(hours).toFixed(2)}`
}
