import { SUM_LIMITS as LIMITS } from '../../tables/climate/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import { DAYS_IN_MONTH } from '../extraterrestrial.js'
import { sitesByDistance } from '../nearest-sites.js'
import { siteRecord } from '../site-table.js'
import { MONTHS } from '../../values/index.js'
import type { Measured } from './quality.js'
import type { RowSun } from './row-sun.js'
import { SERIES_PATH } from './series-error.js'
import type { SeriesFile, SeriesYear } from './series-file.js'

/** Slips that are known by the ratio of the sums that they make. */
const SLIPS = [
  [2, 'energy of half an hour was taken for power, or power of two rows for one'],
  [0.5, 'energy of half an hour was taken for power'],
  [4, 'energy of a quarter of an hour stands for power'],
  [0.25, 'energy of a quarter of an hour was taken for power'],
  [3.6, 'kJ/m2 were taken for Wh/m2'],
  [1 / 3.6, 'Wh/m2 were taken for kJ/m2'],
  [0.0036, 'MJ/m2 were taken for Wh/m2'],
  [0.001, 'kWh/m2 were taken for Wh/m2'],
  [1000, 'Wh/m2 were taken for kWh/m2'],
  [1 / 6, 'energy of ten minutes was taken for power'],
  [1 / 12, 'energy of five minutes was taken for power'],
] as const
/** How near a ratio must be to that of a slip, as a share. */
const NEAR = 0.2
/** A month with less of its daylight measured is not compared. */
const LEAST_MEASURED = 0.8

/**
 * Compares global radiation with that of the nearest built-in station: the year for a wrong unit or interval, the months
 * for a sensor that drifts. Missing daylight counts as bright as the rest of its month.
 *
 * @throws StageError when the year cannot be that of this region.
 */
export function checkSums(
  measured: Measured,
  year: SeriesYear,
  file: SeriesFile,
  sun: RowSun,
  worksheet: Worksheet,
): void {
  const [near] = sitesByDistance(file, LIMITS.reachKm)
  if (near === undefined) {
    worksheet.find({
      severity: 'note',
      id: 'climate.sums-unchecked',
      message: `no built-in station lies within ${LIMITS.reachKm} km of the weather file's place, so its sums were compared with nothing`,
      where: SERIES_PATH,
      source: LIMITS.source,
      fix: 'compare its yearly global radiation with a map of your country',
    })
    return
  }
  const months = monthlyClearness(measured, year, sun)
  const table = siteRecord(near.site).ghiWhM2Day
  const tableWhM2 = table.reduce(
    (sum, each, month) => sum + (months[month]!.share > 0 ? each * DAYS_IN_MONTH[month]! : 0),
    0,
  )
  const measuredMonths = months.filter(({ share }) => share > 0).length
  const fileWhM2 = months.reduce((sum, { whM2 }) => sum + whM2, 0)
  const ratio = fileWhM2 / tableWhM2
  const station = `${near.site.name}, ${near.site.state} (${near.distanceKm.toFixed(0)} km)`
  worksheet.step({
    id: 'climate.year-sum',
    says: 'Global radiation of the weather file over that of the nearest built-in station, in the months that the file has',
    formula: 'r = H / H_station',
    inputs: [
      { symbol: 'H', value: fileWhM2 / 1000, unit: 'kWh/m2', from: SERIES_PATH },
      { symbol: 'H_station', value: tableWhM2 / 1000, unit: 'kWh/m2', from: station },
    ],
    result: { symbol: 'r', value: ratio, unit: '' },
    source: LIMITS.source,
  })
  if (Math.abs(ratio - 1) > LIMITS.yearRel) sayYear({ ratio, fileWhM2, tableWhM2, station, measuredMonths }, worksheet)
  const off = months.flatMap(({ whM2, share }, month) => {
    const ofTable = whM2 / (table[month]! * DAYS_IN_MONTH[month]!)
    const isOff = share >= LEAST_MEASURED && Math.abs(ofTable - 1) > LIMITS.monthRel
    return isOff ? [`${MONTHS[month]} ${ofTable.toFixed(2)}`] : []
  })
  if (off.length === 0) return
  worksheet.find({
    severity: 'note',
    id: 'climate.month-sums',
    message: `global radiation of the weather file over that of ${station}: ${off.join(', ')}; single months of a sound file stay within ${(100 * LIMITS.monthRel).toFixed(0)} % more often than not`,
    where: SERIES_PATH,
    source: LIMITS.source,
    fix: 'a ratio that falls or rises through the year is a soiled or ageing sensor; one month is mostly weather',
  })
}

interface ComparedSums {
  readonly ratio: number
  readonly fileWhM2: number
  readonly tableWhM2: number
  readonly station: string
  readonly measuredMonths: number
}

function sayYear({ ratio, fileWhM2, tableWhM2, station, measuredMonths }: ComparedSums, worksheet: Worksheet): void {
  const slip = SLIPS.find(([factor]) => Math.abs(ratio / factor - 1) < NEAR)
  const guess = slip === undefined ? '' : `: as if ${slip[1]}`
  const message = `${measuredMonths === 12 ? 'a year' : `what it has of the year (${measuredMonths} months)`} of its global radiation is ${(fileWhM2 / 1000).toPrecision(3)} kWh/m2, ${ratio.toPrecision(2)} times that of ${station}, ${(tableWhM2 / 1000).toFixed(0)} kWh/m2${guess}`
  const fix = 'check unit and length of interval of the radiation columns, and what the rows stand for'
  const refusedRel = measuredMonths < LIMITS.fewMonths ? LIMITS.refusedFewRel : LIMITS.refusedRel
  if (ratio > 1 + refusedRel || ratio < 1 / (1 + refusedRel))
    throw new StageError(SERIES_PATH, `weather file: ${message}`, fix)
  worksheet.find({
    severity: 'warning',
    id: 'climate.year-sum',
    message: `the weather file: ${message}`,
    where: SERIES_PATH,
    source: LIMITS.source,
    fix,
  })
}

/** Global radiation by month, Wh/m2, scaled up by the sun above the air for rows without; and the share that is measured. */
function monthlyClearness(
  { ghi, dni, dhi }: Measured,
  year: SeriesYear,
  sun: RowSun,
): readonly { readonly whM2: number; readonly share: number }[] {
  const [light, seen, above] = [new Float64Array(12), new Float64Array(12), new Float64Array(12)]
  for (let row = 0; row < year.length; row++) {
    if (sun.sunlit[row] === 0) continue
    const month = year.month[row]! - 1
    above[month]! += sun.levelWM2[row]! * year.stepH
    const global = ghi?.[row] ?? dni![row]! * sun.cosZenith[row]! + dhi![row]!
    if (Number.isNaN(global)) continue
    light[month]! += global * year.stepH
    seen[month]! += sun.levelWM2[row]! * year.stepH
  }
  return Array.from(light, (whM2, month) => ({
    whM2: seen[month]! > 0 ? (whM2 * above[month]!) / seen[month]! : 0,
    share: above[month]! > 0 ? seen[month]! / above[month]! : 0,
  }))
}
