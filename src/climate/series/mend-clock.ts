import type { WeatherFile } from '../../project/index.js'
import { StageError, type Source, type Worksheet } from '../../worksheet/index.js'
import { findClock, type FoundClock } from './find-clock.js'
import type { Measured } from './quality.js'
import { rowSun } from './row-sun.js'
import { SERIES_PATH } from './series-error.js'
import type { SeriesFile, SeriesYear } from './series-file.js'

/** A smaller shift is not told as an error, h. */
const TOLD_FROM_H = 0.1
/** From half an hour on (less the search's own width) nothing goes on without the person's word, h. */
const REFUSED_FROM_H = 0.45
/** The moved clock must fit at least this much better to be believed, as in the check of EPW files. */
const CLEARLY_BETTER = 0.8
const SOURCE: Source = {
  document: 'closure of direct, diffuse and global radiation, or symmetry of clear days about solar noon',
  standing: 'common practice, no source',
}

/**
 * Compares the clock of a series with the sun, tells what was found, and moves the stamps where the project asks for it.
 *
 * @param asked `auto`, hours to add to the stamps, or undefined.
 * @throws StageError when the clock is half an hour off or changes in summer, and the project does not say what to do.
 */
export function mendClock(
  asked: WeatherFile['clock_shift_h'],
  measured: Measured,
  year: SeriesYear,
  file: SeriesFile,
  worksheet: Worksheet,
): SeriesYear {
  const found = findClock(measured, year, file, rowSun(year, file))
  const shiftH = isBelieved(found) ? found.shiftH : undefined
  const isOff = shiftH !== undefined && Math.abs(shiftH) >= TOLD_FROM_H
  record(found, worksheet)
  if (typeof asked !== 'number' && found.daylightSaving !== undefined) throw savingError(found.daylightSaving)
  if (asked === undefined) {
    if (shiftH === undefined) {
      sayUnknown(worksheet)
      return year
    }
    if (!isOff) return year
    if (Math.abs(shiftH) >= REFUSED_FROM_H)
      throw new StageError(
        SERIES_PATH,
        `weather file: ${sayShift(shiftH, found)}; half an hour and more is not used without your word`,
        `check stamps_mark, clock and time zone of the file${file.plane === undefined ? '' : ', and azimuth_deg of its sensor'}; or state site.climate.clock_shift_h: auto to move the stamps, or 0 to leave them`,
      )
    worksheet.find({
      severity: 'warning',
      id: 'climate.clock-shift',
      message: `${sayShift(shiftH, found)}; the stamps are used as they stand`,
      where: SERIES_PATH,
      source: SOURCE,
      fix: 'state site.climate.clock_shift_h: auto to move them; a shift moves yield between east and west roofs',
    })
    return year
  }
  if (asked === 'auto' && shiftH === undefined) sayUnknown(worksheet)
  const moveH = asked === 'auto' ? (isOff ? shiftH : 0) : asked
  worksheet.find({
    severity: 'note',
    id: 'climate.clock-moved',
    message:
      moveH === 0
        ? `the stamps of the weather file stay as they are; by the sun ${shiftH === undefined ? 'no shift could be found' : `${signed(shiftH)} h would fit best`}`
        : `the stamps of the weather file were moved by ${signed(moveH)} h, as ${asked === 'auto' ? 'the sun shows' : 'the project states'}${asked === 'auto' || shiftH === undefined ? '' : `; by the sun ${signed(shiftH)} h would fit best`}`,
    where: 'site.climate.clock_shift_h',
    source: SOURCE,
  })
  return moveH === 0 ? year : { ...year, middleH: year.middleH.map((middle) => middle + moveH) }
}

/** A closure that the best shift hardly betters says nothing. */
function isBelieved({ shiftH, rmsAsStampedWM2: as, rmsShiftedWM2: moved }: FoundClock): boolean {
  if (shiftH === undefined || shiftH === 0) return shiftH === 0
  return as === undefined || moved === undefined || moved <= CLEARLY_BETTER * as
}

function sayShift(shiftH: number, { by, rmsAsStampedWM2: as, rmsShiftedWM2: moved }: FoundClock): string {
  const why =
    by === 'closure' && as !== undefined && moved !== undefined
      ? `direct and diffuse then fit global within ${moved.toFixed(1)} W/m2 instead of ${as.toFixed(1)} W/m2`
      : 'mornings and afternoons of its clearest days are then alike'
  return `its stamps look ${Math.abs(shiftH).toFixed(2)} h too ${shiftH > 0 ? 'early' : 'late'}: with ${signed(shiftH)} h added ${why}`
}

function savingError({ summerH, winterH }: NonNullable<FoundClock['daylightSaving']>): StageError {
  return new StageError(
    SERIES_PATH,
    `weather file: its clock keeps daylight saving time: the sun wants ${signed(summerH)} h from April to October and ${signed(winterH)} h from December to February`,
    'for kind: station_csv state table.clock: local; other kinds are local standard time, so export the file again without daylight saving; site.climate.clock_shift_h: 0 uses it as it stands',
  )
}

function sayUnknown(worksheet: Worksheet): void {
  worksheet.find({
    severity: 'note',
    id: 'climate.clock-unknown',
    message: 'the radiation of the weather file shows no clear course of the sun, so its clock was not checked',
    where: SERIES_PATH,
    fix: 'see that stamps_mark, clock and time zone are those of the station',
  })
}

function record({ shiftH, by }: FoundClock, worksheet: Worksheet): void {
  worksheet.note({
    id: 'climate.clock',
    says: 'Hours to add to the stamps of the weather file so that they fit the sun best',
    formula:
      by === 'closure'
        ? 'shift with the least rms(DNI * cos z + DHI - GHI)'
        : 'median over the ten clearest days of solar noon less the middle of the day',
    inputs: [],
    result: { symbol: 'shift', value: shiftH ?? 'none found', unit: shiftH === undefined ? '' : 'h' },
    source: SOURCE,
  })
}

function signed(hours: number): string {
  return `${hours < 0 ? '-' : '+'}${Math.abs(hours).toFixed(2)}`
}
