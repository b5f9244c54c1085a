import { eccentricityFactor, SOLAR_CONSTANT_W_M2 } from '../sun/index.js'
import { RADIATION_LIMITS as LIMITS } from '../tables/climate/index.js'
import { StageError, type Finding } from '../worksheet/index.js'
import { EPW_PATH } from './epw-error.js'
import type { EpwLocation } from './epw-header.js'
import type { EpwRows } from './epw-rows.js'
import { MONTHS } from '../values/index.js'
import { nameHours } from './epw-values.js'
import { spencerSun } from './spencer-sun.js'
import { RADIANS_PER_DEGREE } from '../values/index.js'

const NIGHT_SIN = Math.sin(-LIMITS.nightBelowDeg * RADIANS_PER_DEGREE)

/** What is added up over the hours of a file to judge its radiation. */
interface Sums {
  /** By month, Wh/m2: global, direct and diffuse on the level, sun above the air. */
  readonly global: Float64Array
  readonly parts: Float64Array
  readonly above: Float64Array
  allWhM2: number
  nightWhM2: number
  daylight: number
  bright: number
  readonly night: number[]
  readonly diffuseAbove: number[]
  readonly beyond: number[]
}

/**
 * Judges whether the radiation of a file can be: at night, against the sun above the air, and one against another.
 *
 * @param rows Hours without gaps.
 * @param location Place and clock that the file states.
 * @param dataLine Line of the first hour, counted from 1.
 * @returns What is doubtful but may be.
 * @throws StageError when it cannot be.
 */
export function checkEpwRadiation(rows: EpwRows, location: EpwLocation, dataLine: number): Finding[] {
  const sums = addUp(rows, location)
  const refuse = (message: string, fix: string): never => {
    throw new StageError(EPW_PATH, `EPW file: ${message}`, fix)
  }
  const share = sums.allWhM2 > 0 ? sums.nightWhM2 / sums.allWhM2 : 0
  if (share > LIMITS.nightShare) {
    const { latitudeDeg, longitudeDeg, utcOffsetH } = location
    refuse(
      `${percent(share)} of its radiation falls in hours in which the sun is down at its place (latitude ${latitudeDeg}, longitude ${longitudeDeg}, UTC ${utcOffsetH} h), at most ${percent(LIMITS.nightShare)} may (${nameHours(rows, sums.night, dataLine)})`,
      'check line 1 of the file: latitude (north positive), longitude (east positive, the Americas negative), time zone; and that each row is stamped with the END of its hour in local STANDARD time',
    )
  }
  const dark = monthsWhere(
    (month) => isSunny(sums, month) && sums.global[month]! < LIMITS.leastClearness * sums.above[month]!,
  )
  const without =
    'use a file that has global, direct and diffuse radiation in every month; 0 is no sign for a missing value, 9999 is'
  if (dark.length > 0) {
    refuse(
      `next to no global horizontal radiation in ${dark.join(', ')}: less than ${percent(LIMITS.leastClearness)} of the sun above the air (column 14)`,
      without,
    )
  }
  const open = monthsWhere((month) => {
    const ratio = sums.parts[month]! / sums.global[month]!
    return isSunny(sums, month) && (ratio < LIMITS.leastClosure || ratio > LIMITS.mostClosure)
  })
  if (open.length > 0) {
    const ratio = total(sums.parts) / total(sums.global)
    refuse(
      `direct and diffuse radiation do not make up global in ${open.join(', ')}: over the year they come to ${percent(ratio)} of it on the level, ${percent(LIMITS.leastClosure)} to ${percent(LIMITS.mostClosure)} a month are accepted (columns 14, 15, 16)`,
      without,
    )
  }
  const clearness = total(sums.global) / total(sums.above)
  if (clearness > LIMITS.mostClearness) {
    refuse(
      `its global horizontal radiation is ${percent(clearness)} of the sun above the air over the year, more than ${percent(LIMITS.mostClearness)} cannot be (column 14)`,
      'check the unit (Wh/m2 in the hour) and the latitude in line 1',
    )
  }
  return [
    countedHours(rows, dataLine, sums.diffuseAbove, sums.bright, 'diffuse radiation above global (columns 16 and 14)'),
    countedHours(rows, dataLine, sums.beyond, sums.daylight, 'radiation beyond what the sun above the air allows'),
  ].flat()
}

function addUp(rows: EpwRows, { latitudeDeg, longitudeDeg, utcOffsetH }: EpwLocation): Sums {
  const [sinLatitude, cosLatitude] = [
    Math.sin(latitudeDeg * RADIANS_PER_DEGREE),
    Math.cos(latitudeDeg * RADIANS_PER_DEGREE),
  ]
  const sums: Sums = {
    global: new Float64Array(12),
    parts: new Float64Array(12),
    above: new Float64Array(12),
    allWhM2: 0,
    nightWhM2: 0,
    daylight: 0,
    bright: 0,
    night: [],
    diffuseAbove: [],
    beyond: [],
  }
  let [day, offsetH, high, wide, normal, end] = [-1, 0, 0, 0, 0, 0]
  const cosZenith = (hour: number): number => high + wide * Math.cos((hour + offsetH) * 15 * RADIANS_PER_DEGREE)
  for (let row = 0; row < rows.length; row++) {
    if (rows.dayOfYear[row] !== day) {
      day = rows.dayOfYear[row]!
      const sun = spencerSun(day)
      offsetH = sun.equationOfTimeH + longitudeDeg / 15 - utcOffsetH - 12
      high = sinLatitude * sun.sinDeclination
      wide = cosLatitude * sun.cosDeclination
      normal = SOLAR_CONSTANT_W_M2 * eccentricityFactor(day)
      end = cosZenith(0)
    }
    const hour = rows.hour[row]!
    const [ghi, dni, dhi] = [rows.ghi[row]!, rows.dni[row]!, rows.dhi[row]!]
    const month = rows.month[row]! - 1
    const middle = cosZenith(hour - 0.5)
    const begin = end
    end = cosZenith(hour)
    // The sun at its highest within the hour, to a few thousandths.
    const highest = Math.max(begin, middle, end)
    sums.allWhM2 += ghi + dhi
    if (highest < NIGHT_SIN) {
      sums.nightWhM2 += ghi + dhi
      if (ghi + dhi > LIMITS.nightWhM2) sums.night.push(row)
      continue
    }
    const level = Math.max(0, middle)
    sums.global[month]! += ghi
    sums.parts[month]! += dni * level + dhi
    sums.above[month]! += normal * level
    if (highest <= 0) continue
    sums.daylight++
    if (isBeyond(ghi, dni, dhi, normal, highest)) sums.beyond.push(row)
    if (ghi <= LIMITS.brightWhM2) continue
    sums.bright++
    if (dhi > LIMITS.mostDiffuse * ghi) sums.diffuseAbove.push(row)
  }
  return sums
}

/** Physically possible limits: global 1.5 S cos(z)^1.2 + 100, diffuse 0.95 S cos(z)^1.2 + 50, direct S; W/m2. */
function isBeyond(ghi: number, dni: number, dhi: number, normalWM2: number, cosZenith: number): boolean {
  if (dni > normalWM2) return true
  // The square is less than the power of 1.2, which is slow.
  const less = normalWM2 * cosZenith * cosZenith
  if (ghi <= 1.5 * less + 100 && dhi <= 0.95 * less + 50) return false
  const sloped = normalWM2 * cosZenith ** 1.2
  return ghi > 1.5 * sloped + 100 || dhi > 0.95 * sloped + 50
}

/** Whether the month has sun enough to be judged. */
function isSunny(sums: Sums, month: number): boolean {
  return sums.above[month]! > LIMITS.sunnyMonthWhM2
}

/** A finding when some hours fail a test, an error when many do. */
function countedHours(
  rows: EpwRows,
  dataLine: number,
  failing: readonly number[],
  of: number,
  what: string,
): Finding[] {
  const share = of > 0 ? failing.length / of : 0
  if (share <= LIMITS.doubtfulShare) return []
  const said = `${what} in ${failing.length} of ${of} hours of daylight (${nameHours(rows, failing, dataLine)})`
  if (share > LIMITS.refusedShare) {
    throw new StageError(
      EPW_PATH,
      `EPW file: ${said}; at most ${percent(LIMITS.refusedShare)} of the hours may fail`,
      'use a file whose three radiations come from one instrument or one model, in Wh/m2 of the hour that ends at its stamp',
    )
  }
  return [
    {
      severity: 'warning',
      id: 'climate.epw-radiation-doubtful',
      message: said,
      where: EPW_PATH,
      source: LIMITS.source,
      fix: 'compare with a file from another publisher; direct and diffuse radiation are used as they stand',
    },
  ]
}

function monthsWhere(test: (month: number) => boolean): string[] {
  return MONTHS.filter((_, month) => test(month))
}

function total(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0)
}

function percent(share: number): string {
  return `${(100 * share).toFixed(0)} %`
}
