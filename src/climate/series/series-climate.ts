import type { WeatherFile } from '../../project/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import { DECOMPOSITION } from '../../tables/climate/index.js'
import { checkEpwLocation } from '../check-epw-location.js'
import type { House } from '../house.js'
import type { HourlyClimate } from '../types.js'
import { checkSums } from './check-sums.js'
import { checkKind } from './file-kind.js'
import { layOutYear } from './lay-out-year.js'
import { leaveOpen } from './leave-open.js'
import { mendClock } from './mend-clock.js'
import { qualityOf, type Measured } from './quality.js'
import { readSolarDatabase } from './read-solar-database.js'
import { readStation } from './read-station.js'
import { readTypicalYear } from './read-typical-year.js'
import { repairRadiation } from './repair-radiation.js'
import { repairWeather } from './repair-weather.js'
import { rowSun } from './row-sun.js'
import { sayQuality } from './say-quality.js'
import { sayRepairs } from './say-repairs.js'
import { SERIES_PATH } from './series-error.js'
import { globalOfPlane, SENSOR_ALBEDO } from './plane-to-global.js'
import type { SeriesFile, SeriesYear } from './series-file.js'

/**
 * Climate of a house from a weather series that is not EPW: read, laid out as one year, its clock compared with the sun,
 * judged and repaired. Every change of what was measured is counted and told.
 *
 * @param choice What the project says of the file. @param text The file.
 * @param house Place of the house.
 * @param worksheet Takes what was found, filled, split and moved.
 * @param isWhole False where only some days are wanted: intervals that cannot be filled have no light then, and `coveredDays` tells which days
 *   count.
 * @throws StageError with line and column of the file, or with what the project must state.
 */
export function seriesClimate(
  choice: WeatherFile,
  text: string,
  house: House,
  worksheet: Worksheet,
  isWhole = true,
): HourlyClimate {
  checkKind(text, choice.kind)
  const file = readFile(choice, text, house)
  const laidOut = layOutYear(file, choice.year)
  const asStamped = measuredOf(file, laidOut, worksheet)
  if (asStamped.ghi === undefined && (asStamped.dni === undefined || asStamped.dhi === undefined))
    throw new StageError(
      SERIES_PATH,
      'weather file: there is no global radiation, and not both direct and diffuse',
      'name the column of global radiation, or those of direct and diffuse, or that of a sensor in a plane',
    )
  checkSums(asStamped, laidOut, file, rowSun(laidOut, file), worksheet)
  const year = mendClock(choice.clock_shift_h, asStamped, laidOut, file, worksheet)
  const measured = file.plane === undefined ? asStamped : measuredOf(file, year)
  const sun = rowSun(year, file)
  const quality = qualityOf(measured, sun, year.stepH)
  sayQuality(quality, measured, sun, year, worksheet)
  const repaired = {
    radiation: repairRadiation(measured, sun, year.stepH, quality.beyond),
    weather: repairWeather(year),
  }
  const { radiation, weather } = isWhole ? repaired : leaveOpen(repaired, measured)
  sayRepairs({ radiation, weather, quality, measured, sun, year }, worksheet)
  checkEpwLocation(
    { ...file, city: file.name, state: '', elevationM: file.elevationM ?? house.elevationM ?? 0 },
    house,
    worksheet,
    SERIES_PATH,
  )
  return {
    kind: 'hourly',
    name: file.name,
    latitudeDeg: file.latitudeDeg,
    longitudeDeg: file.longitudeDeg,
    elevationM: file.elevationM ?? house.elevationM ?? 0,
    utcOffsetH: file.utcOffsetH,
    stepH: year.stepH,
    middleH: year.middleH,
    length: year.length,
    month: year.month,
    day: year.day,
    // The clock hour in which the interval's middle lies, by the mended clock, within its day.
    hour: Uint8Array.from(year.middleH, (middle) => Math.min(24, Math.max(1, Math.floor(middle) + 1))),
    dayOfYear: year.dayOfYear,
    ghiWM2: radiation.ghi,
    dniWM2: radiation.dni,
    dhiWM2: radiation.dhi,
    dryBulbC: weather.dryBulbC,
    windMs: weather.windMs,
    snowDepthCm: weather.snowDepthCm,
    ...(isMostlySplit(radiation.split.length, quality.daylight)
      ? { decompositionRel: { southRel: DECOMPOSITION.southRel, otherRel: DECOMPOSITION.otherRel } }
      : {}),
  }
}

/** What was measured; that of a sensor in a plane as the global radiation that makes it. @param worksheet Takes that it was worked out. */
function measuredOf(file: SeriesFile, year: SeriesYear, worksheet?: Worksheet): Measured {
  const [ghi, dni, dhi, plane] = (['ghi', 'dni', 'dhi', 'plane'] as const).map((name) => year.columns.get(name))
  if (plane === undefined || file.plane === undefined) return { ghi, dni, dhi }
  const { tiltDeg, azimuthDeg } = file.plane
  worksheet?.find({
    severity: 'note',
    id: 'climate.series-plane',
    message: `global radiation was worked out from a sensor tilted ${tiltDeg} deg towards ${azimuthDeg} deg; that plane gets in the estimate what was measured, others are less sure`,
    where: SERIES_PATH,
    source: DECOMPOSITION.source,
  })
  worksheet?.assume({
    path: 'site.climate.plane_albedo',
    value: SENSOR_ALBEDO,
    unit: '',
    why: 'light that the ground before the sensor throws back, as grass does',
    source: { document: '', standing: 'common practice, no source' },
  })
  return { ghi: globalOfPlane(plane, file.plane, rowSun(year, file)), dni: undefined, dhi: undefined }
}

/** A file counts as made from global radiation alone once a tenth of its daylight was split. */
function isMostlySplit(split: number, daylight: number): boolean {
  return split > 0.1 * daylight
}

/** The rows of a file as its kind is read. @throws StageError with line and column. */
export function readFile(choice: WeatherFile, text: string, house: House): SeriesFile {
  if (choice.kind === 'tmy3_csv') return readTypicalYear(text)
  if (choice.kind === 'us_solar_database_csv') return readSolarDatabase(text, choice)
  if (choice.table !== undefined) return readStation(text, choice.table, house, choice.file)
  throw new StageError(
    'site.climate.table',
    'missing; kind: station_csv wants to know how the table is to be read',
    'state site.climate.table with stamp_columns, stamp_format, stamps_mark, clock and columns',
  )
}
