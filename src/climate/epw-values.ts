import { MONTHS } from '../values/index.js'
import { StageError, type Finding } from '../worksheet/index.js'
import { EPW_COLUMN } from './epw-columns.js'
import { epwError, EPW_PATH, FETCH_AGAIN } from './epw-error.js'
import type { EpwRows } from './epw-rows.js'

interface Rule {
  readonly series: 'dryBulb' | 'ghi' | 'dni' | 'dhi' | 'wind' | 'snowDepth'
  readonly name: string
  readonly unit: string
  /** From this value on the field means that nothing was measured. */
  readonly missingFrom: number
  readonly low: number
  readonly high: number
}

/**
 * Missing codes of the EPW data dictionary and the range that is believed. An hourly mean of radiation stays below
 * the 1412 W/m2 that the sun sends in January; more means another unit.
 */
const RULES: readonly Rule[] = [
  { series: 'ghi', name: 'global horizontal radiation', unit: 'Wh/m2', missingFrom: 9999, low: 0, high: 1500 },
  { series: 'dni', name: 'direct normal radiation', unit: 'Wh/m2', missingFrom: 9999, low: 0, high: 1500 },
  { series: 'dhi', name: 'diffuse horizontal radiation', unit: 'Wh/m2', missingFrom: 9999, low: 0, high: 1500 },
  { series: 'dryBulb', name: 'dry-bulb temperature', unit: 'deg C', missingFrom: 99.9, low: -70, high: 70 },
  { series: 'wind', name: 'wind speed', unit: 'm/s', missingFrom: 999, low: 0, high: 100 },
  { series: 'snowDepth', name: 'snow depth', unit: 'cm', missingFrom: 999, low: 0, high: 998 },
]

/** Light wind taken when a file has none at all, m/s. */
export const WIND_WHEN_UNKNOWN_MS = 1
const NAMED_HOURS = 5
/** Short English names of the months, January first. */

/**
 * Checks every value of the rows, fills gaps of wind and marks unknown snow with -1, in place.
 *
 * @param rows As read; wind and snow depth are changed.
 * @param dataLine Line of the first hour, counted from 1.
 * @returns Findings about gaps that were filled, and whether wind is missing altogether.
 * @throws StageError when radiation or temperature is missing, or a value is no number or out of range.
 */
export function checkEpwValues(rows: EpwRows, dataLine: number): { findings: Finding[]; windUnknown: boolean } {
  const refused: string[] = []
  const findings: Finding[] = []
  let windUnknown = false
  for (const rule of RULES) {
    const missing = findMissing(rows, rule, dataLine)
    if (missing.length === 0) continue
    const said = `${rule.name} is missing in ${missing.length} of ${rows.length} hours (${nameHours(rows, missing, dataLine)})`
    if (rule.series === 'wind') {
      windUnknown = missing.length === rows.length
      fillWind(rows.wind, missing)
      const filled = windUnknown
        ? `${WIND_WHEN_UNKNOWN_MS} m/s was taken`
        : 'it was interpolated between the hours around'
      findings.push({
        severity: 'warning',
        id: 'climate.epw-wind-missing',
        message: `${said}; ${filled}`,
        where: EPW_PATH,
      })
    } else if (rule.series === 'snowDepth') {
      for (const row of missing) rows.snowDepth[row] = -1
      findings.push({ severity: 'note', id: 'climate.epw-snow-missing', message: said, where: EPW_PATH })
    } else {
      refused.push(said)
    }
  }
  if (rows.snowDepth.every((depth) => depth === 0) && hasFrostyMonth(rows)) {
    rows.snowDepth.fill(-1)
    const message =
      'snow depth is 0 in every hour although a month has its mean below freezing, so it is taken as unknown'
    findings.push({ severity: 'note', id: 'climate.epw-snow-unknown', message, where: EPW_PATH, fix: SNOW_FIX })
  }
  if (refused.length > 0) {
    throw new StageError(
      EPW_PATH,
      `EPW file: ${refused.join('; ')}`,
      'use a file without gaps in radiation and temperature, such as a typical year',
    )
  }
  return { findings, windUnknown }
}

const SNOW_FIX =
  'state site.monthly_snowfall_in, or losses.snow_pct; files made from typical years often carry no snow depth'

/** Whether the mean dry-bulb of any month is below 0 deg C. */
function hasFrostyMonth(rows: EpwRows): boolean {
  const sums = Array.from({ length: 12 }, () => 0)
  for (let row = 0; row < rows.length; row++) sums[rows.month[row]! - 1]! += rows.dryBulb[row]!
  return sums.some((sum) => sum < 0)
}

function findMissing(rows: EpwRows, rule: Rule, dataLine: number): number[] {
  const series = rows[rule.series]
  const missing: number[] = []
  for (let row = 0; row < rows.length; row++) {
    const value = series[row]!
    if (value >= rule.low && value <= rule.high) continue
    const column = EPW_COLUMN[rule.series]
    const text = Number.isNaN(value) ? rows.fieldText(row, column).trim() : String(value)
    if (text === '' || value >= rule.missingFrom) {
      missing.push(row)
    } else {
      const found = Number.isNaN(value)
        ? `'${text.slice(0, 20)}' is no number`
        : `${text} ${rule.unit} is outside ${rule.low} to ${rule.high}`
      throw epwError(dataLine + row, column + 1, `${rule.name} ${found}`, FETCH_AGAIN)
    }
  }
  return missing
}

/** The first few of some hours with their lines, for messages. */
export function nameHours(rows: EpwRows, missing: readonly number[], dataLine: number): string {
  const named = missing.slice(0, NAMED_HOURS).map((row) => {
    const stamp = `${String(rows.hour[row]).padStart(2, '0')}:00`
    return `${rows.day[row]} ${MONTHS[rows.month[row]! - 1]} ${stamp}, line ${dataLine + row}`
  })
  return named.join('; ') + (missing.length > NAMED_HOURS ? '; ...' : '')
}

/** Straight lines over the gaps, the year taken as a ring. */
function fillWind(wind: Float64Array, missing: readonly number[]): void {
  const size = wind.length
  if (missing.length === size) {
    wind.fill(WIND_WHEN_UNKNOWN_MS)
    return
  }
  const gap = new Set(missing)
  for (const start of missing) {
    const before = (start - 1 + size) % size
    if (gap.has(before)) continue
    let hours = 1
    while (gap.has((start + hours) % size)) hours++
    const [left, right] = [wind[before]!, wind[(start + hours) % size]!]
    for (let hour = 0; hour < hours; hour++) {
      wind[(start + hour) % size] = left + ((right - left) * (hour + 1)) / (hours + 1)
    }
  }
}
