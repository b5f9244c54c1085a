import { clockShift } from '../clock-shift.js'
import type { HourlyClimate } from '../types.js'
import type { Measured } from './quality.js'
import type { RowSun } from './row-sun.js'
import type { SeriesFile, SeriesYear } from './series-file.js'
import { symmetricClockShiftH } from './symmetric-clock.js'

/** What the course of the sun says of the clock of a series. */
export interface FoundClock {
  /** Hours to add to the stamps; undefined when nothing can be found. */
  readonly shiftH: number | undefined
  readonly by: 'closure' | 'symmetry'
  /** How well the radiations agree as stamped and moved, W/m2 rms; closure only. */
  readonly rmsAsStampedWM2?: number
  readonly rmsShiftedWM2?: number
  /** Shift of summer and winter months apart from each other by about an hour: a clock with daylight saving. */
  readonly daylightSaving?: { readonly summerH: number; readonly winterH: number }
}

const isSummer = (month: number): boolean => month >= 4 && month <= 10
const isWinter = (month: number): boolean => month === 12 || month <= 2
/** A clock that is set forward in summer shows itself within this of an hour, h. */
const HOUR_WITHIN_H = 0.25

/** Finds the clock error of a series: by closure where all three radiations are measured, by symmetry otherwise. */
export function findClock(measured: Measured, year: SeriesYear, file: SeriesFile, sun: RowSun): FoundClock {
  const { ghi, dni, dhi } = measured
  if (ghi !== undefined && dni !== undefined && dhi !== undefined) {
    const climate = asClimate({ ghi, dni, dhi }, year, file)
    const everyNth = year.stepH < 0.5 ? 5 : 2
    const all = clockShift(climate, everyNth)
    const summer = clockShift(climate, everyNth, isSummer)
    const winter = clockShift(climate, everyNth, isWinter)
    return {
      shiftH: all.shiftH,
      by: 'closure',
      rmsAsStampedWM2: all.rmsAsStampedWM2,
      rmsShiftedWM2: all.rmsShiftedWM2,
      ...saving(summer.shiftH, winter.shiftH),
    }
  }
  const level = levelRadiation(measured, sun)
  const find = (inMonths?: (month: number) => boolean): number | undefined =>
    symmetricClockShiftH(level, sun.levelWM2, year, file, inMonths)
  return { shiftH: find(), by: 'symmetry', ...saving(find(isSummer), find(isWinter)) }
}

/** Summer stamps of a clock with daylight saving stand an hour late, so they want an hour less than winter's. */
function saving(summerH: number | undefined, winterH: number | undefined): Pick<FoundClock, 'daylightSaving'> {
  if (summerH === undefined || winterH === undefined) return {}
  return Math.abs(winterH - summerH - 1) <= HOUR_WITHIN_H ? { daylightSaving: { summerH, winterH } } : {}
}

/** Global radiation where it is measured, otherwise diffuse: what is symmetric on a clear day; gaps count as dark. */
function levelRadiation({ ghi, dhi, dni }: Measured, { levelWM2 }: RowSun): Float64Array {
  const values = ghi ?? dni ?? dhi ?? new Float64Array(levelWM2.length)
  return values.map((value) => Math.max(0, value || 0))
}

/** The radiations as a climate; a row that lacks one of them is dark, and so not looked at. */
function asClimate(
  { ghi, dni, dhi }: { readonly [Name in 'ghi' | 'dni' | 'dhi']: Float64Array },
  year: SeriesYear,
  { name, latitudeDeg, longitudeDeg, utcOffsetH }: SeriesFile,
): HourlyClimate {
  const empty = new Float64Array(0)
  return {
    kind: 'hourly',
    name,
    latitudeDeg,
    longitudeDeg,
    elevationM: 0,
    utcOffsetH,
    stepH: year.stepH,
    middleH: year.middleH,
    length: year.length,
    month: year.month,
    day: year.day,
    hour: year.day,
    dayOfYear: year.dayOfYear,
    ghiWM2: ghi.map((value, row) => (Number.isNaN(dni[row]! + dhi[row]!) || Number.isNaN(value) ? 0 : value)),
    dniWM2: dni,
    dhiWM2: dhi,
    dryBulbC: empty,
    windMs: empty,
    snowDepthCm: empty,
  }
}
