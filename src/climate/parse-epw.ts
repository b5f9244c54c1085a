import type { Assumption, Finding } from '../worksheet/index.js'
import { checkEpwRadiation } from './epw-radiation.js'
import { parseEpwHeader, type EpwLocation } from './epw-header.js'
import { readEpwRows } from './epw-rows.js'
import { checkEpwValues, WIND_WHEN_UNKNOWN_MS } from './epw-values.js'
import type { HourlyClimate } from './types.js'

/** What an EPW file holds, and what was doubtful about it. */
export interface EpwFile {
  readonly climate: HourlyClimate
  readonly location: EpwLocation
  readonly findings: readonly Finding[]
  readonly assumptions: readonly Assumption[]
}

/**
 * Reads an hourly weather file in EPW format: radiation as means over the hour that ends at the stamp, W/m2.
 *
 * @param text The whole file; a byte order mark and either line ending are allowed.
 * @throws StageError that names line and column when the file is broken, is not one year of single hours, lacks
 * radiation or temperature in any hour, or has radiation that cannot be.
 * @source EnergyPlus Auxiliary Programs, EPW data dictionary (secondary): columns, hour-ending stamps, missing codes
 */
export function parseEpw(text: string): EpwFile {
  const { location, dataAt, dataLine } = parseEpwHeader(text)
  const rows = readEpwRows(text, dataAt, dataLine)
  const { findings, windUnknown } = checkEpwValues(rows, dataLine)
  findings.push(...checkEpwRadiation(rows, location, dataLine))
  const place = [location.city, location.state].filter((part) => part !== '' && part !== '-').join(', ')
  const climate: HourlyClimate = {
    kind: 'hourly',
    stepH: 1,
    middleH: Float64Array.from(rows.hour, (hour) => hour - 0.5),
    name: location.dataSource === '' ? place : `${place} (${location.dataSource})`,
    latitudeDeg: location.latitudeDeg,
    longitudeDeg: location.longitudeDeg,
    elevationM: location.elevationM,
    utcOffsetH: location.utcOffsetH,
    length: rows.length,
    month: rows.month,
    day: rows.day,
    hour: rows.hour,
    dayOfYear: rows.dayOfYear,
    ghiWM2: rows.ghi,
    dniWM2: rows.dni,
    dhiWM2: rows.dhi,
    dryBulbC: rows.dryBulb,
    windMs: rows.wind,
    snowDepthCm: rows.snowDepth,
  }
  return { climate, location, findings, assumptions: windUnknown ? [WIND_ASSUMPTION] : [] }
}

const WIND_ASSUMPTION: Assumption = {
  path: 'site.climate.epw.wind',
  value: WIND_WHEN_UNKNOWN_MS,
  unit: 'm/s',
  why: 'the weather file has no wind; a light wind keeps the modules warm and the estimate low',
  source: { document: '', standing: 'common practice, no source' },
}
