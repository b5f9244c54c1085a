import { SERIES_LIMITS as LIMITS } from '../../tables/climate/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import { nameRows, sayMonths } from './name-rows.js'
import type { Measured, Quality } from './quality.js'
import type { RowSun } from './row-sun.js'
import { SERIES_PATH } from './series-error.js'
import type { SeriesYear } from './series-file.js'

const TESTS = [
  ['beyond', 'beyond what is physically possible (taken as missing)'],
  ['rare', 'beyond what is extremely rare (kept)'],
  ['open', 'global apart from direct on the level and diffuse (kept)'],
  ['diffuseAbove', 'diffuse above global (kept)'],
  ['stuck', `the same value for ${LIMITS.stuckH} h and more (kept)`],
] as const

/**
 * Tells which intervals of daylight fail a test of measured radiation.
 *
 * @throws StageError when more than a fifth of them do.
 */
export function sayQuality(
  quality: Quality,
  measured: Measured,
  sun: RowSun,
  year: SeriesYear,
  worksheet: Worksheet,
): void {
  sayNight(quality, year, worksheet)
  sayClosure(measured, sun, worksheet)
  const share = quality.daylight > 0 ? quality.failing.length / quality.daylight : 0
  if (quality.failing.length === 0) return
  const counts = TESTS.filter(([test]) => quality[test].length > 0)
    .map(([test, what]) => `${quality[test].length} ${what}, first ${nameRows(quality[test].slice(0, 1), year)}`)
    .join('; ')
  const said = `${quality.failing.length} of ${quality.daylight} intervals of daylight (${percent(share)}) fail a test: ${counts}`
  const fix =
    'compare with a neighbouring station; a wrong clock, zone, unit or place of the station fails many at once'
  if (share > LIMITS.refusedShare)
    throw new StageError(SERIES_PATH, `weather file: ${said}; at most ${percent(LIMITS.refusedShare)} may fail`, fix)
  const daylight = Array.from(sun.sunlit.keys()).filter((row) => sun.sunlit[row]! > 0)
  const isMany = share > LIMITS.doubtfulShare
  worksheet.find({
    severity: isMany ? 'warning' : 'note',
    id: 'climate.series-doubtful',
    message: isMany ? `${said}; by month ${sayMonths(quality.failing, daylight, year)}` : said,
    where: SERIES_PATH,
    source: LIMITS.source,
    fix,
  })
}

function sayNight({ nightLight, negative }: Quality, year: SeriesYear, worksheet: Worksheet): void {
  if (nightLight.length > 0)
    worksheet.find({
      severity: 'warning',
      id: 'climate.series-night-light',
      message: `${nightLight.length} intervals have more than ${LIMITS.night.leastWM2} W/m2 with the sun at least ${-LIMITS.night.belowDeg} deg below the horizon (${nameRows(nightLight, year)}); that light was left out`,
      where: SERIES_PATH,
      source: LIMITS.source,
      fix: 'check clock, time zone and place of the station; lamps reach sensors too',
    })
  if (negative.length > 0)
    worksheet.find({
      severity: 'note',
      id: 'climate.series-negative',
      message: `${negative.length} intervals have radiation below 0 W/m2 (${nameRows(negative, year)}); it was counted as 0`,
      where: SERIES_PATH,
      source: LIMITS.source,
    })
}

/** With three radiations: how well they agree; direct and diffuse are used as they stand. */
function sayClosure({ ghi, dni, dhi }: Measured, sun: RowSun, worksheet: Worksheet): void {
  if (ghi === undefined || dni === undefined || dhi === undefined) return
  let [squares, count] = [0, 0]
  for (let row = 0; row < ghi.length; row++) {
    const apart = dni[row]! * sun.cosZenith[row]! + dhi[row]! - ghi[row]!
    if (!(ghi[row]! > LIMITS.closure.leastWM2) || sun.cosZenith[row]! <= 0.1 || Number.isNaN(apart)) continue
    squares += apart ** 2
    count += 1
  }
  worksheet.step({
    id: 'climate.closure',
    says: 'How well direct, diffuse and global radiation of the weather file agree; direct and diffuse are used',
    formula: 'e = rms(DNI * cos z + DHI - GHI), GHI > 50 W/m2, cos z > 0.1',
    inputs: [{ symbol: 'GHI, DNI, DHI', value: count, unit: 'intervals', from: SERIES_PATH }],
    result: { symbol: 'e', value: count > 0 ? Math.sqrt(squares / count) : 0, unit: 'W/m2' },
    source: LIMITS.source,
  })
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`
}
