import { DECOMPOSITION, GAP_LIMITS } from '../../tables/climate/index.js'
import { StageError, type Finding, type Worksheet } from '../../worksheet/index.js'
import { WIND_WHEN_UNKNOWN_MS } from '../epw-values.js'
import type { Gap } from './fill-gaps.js'
import { nameRows, sayRow } from './name-rows.js'
import type { Measured, Quality } from './quality.js'
import type { RepairedRadiation } from './repair-radiation.js'
import type { RepairedWeather } from './repair-weather.js'
import type { RowSun } from './row-sun.js'
import { SERIES_PATH } from './series-error.js'
import type { SeriesYear } from './series-file.js'

interface Repairs {
  readonly radiation: RepairedRadiation
  readonly weather: RepairedWeather
  readonly quality: Quality
  readonly measured: Measured
  readonly sun: RowSun
  readonly year: SeriesYear
}

/**
 * Tells what was derived, split and filled, with counts and first places.
 *
 * @throws StageError with the place of a gap that is too long to fill.
 */
export function sayRepairs(repairs: Repairs, worksheet: Worksheet): void {
  refuseOpen(repairs)
  const tell = (severity: Finding['severity'], id: string, message: string, rest: Partial<Finding> = {}): void =>
    worksheet.find({ severity, id, message, where: SERIES_PATH, ...rest })
  sayRadiation(repairs, tell, worksheet)
  sayGaps(repairs, tell)
  sayWeather(repairs, tell, worksheet)
}

type Tell = (severity: Finding['severity'], id: string, message: string, rest?: Partial<Finding>) => void

function refuseOpen({ radiation, weather, year }: Repairs): void {
  const [gap] = radiation.gaps.open
  if (gap !== undefined)
    throw new StageError(
      SERIES_PATH,
      `weather file: radiation is missing for ${hours(gap, year)} h from ${sayRow(gap.from, year)} on, to ${sayRow(gap.from + gap.rows - 1, year)}; ${GAP_LIMITS.neighbourDaysH} h at most are filled, from whole days beside the gap`,
      'fill the gap from another station, or use a file of another year',
    )
  const [row] = weather.temperature.open
  if (row !== undefined)
    throw new StageError(
      SERIES_PATH,
      `weather file: air temperature is missing in ${weather.temperature.open.length} intervals that nothing in their month stands for (${nameRows(weather.temperature.open, year)})`,
      'use a file with temperature in every month',
    )
}

function sayRadiation({ radiation, quality, measured, year }: Repairs, tell: Tell, worksheet: Worksheet): void {
  const { derived, split } = radiation
  if (derived.length > 0)
    tell(
      'note',
      'climate.series-third-derived',
      `the third radiation follows from the two others in ${derived.length} of ${quality.daylight} intervals of daylight (${nameRows(derived, year)})`,
    )
  if (split.length === 0) return
  tell(
    'warning',
    'climate.series-split',
    `global radiation was split into direct and diffuse by a correlation in ${split.length} of ${quality.daylight} intervals of daylight (${nameRows(split, year)}); a year on a plane is then uncertain by ${100 * DECOMPOSITION.southRel} % towards the equator up to 34 deg and ${100 * DECOMPOSITION.otherRel} % on others`,
    { source: DECOMPOSITION.source, fix: 'use a file with measured direct or diffuse radiation to narrow this' },
  )
  if (measured.dni === undefined && measured.dhi === undefined)
    worksheet.assume({
      path: 'site.climate.decomposition',
      value: 'Erbs',
      unit: '',
      why: 'the weather file has global radiation only; its diffuse share is taken from the clearness of each interval',
      source: DECOMPOSITION.source,
    })
}

function sayGaps({ radiation, year }: Repairs, tell: Tell): void {
  const { interpolated, fromDays } = radiation.gaps
  const said = [
    [interpolated, `of up to ${GAP_LIMITS.interpolatedH} h by straight lines of clearness and diffuse share`],
    [fromDays, `of up to ${GAP_LIMITS.neighbourDaysH} h by the same hours of the nearest whole days`],
  ] as const
  const parts = said.flatMap(([gaps, how]) => {
    const [first] = gaps
    if (first === undefined) return []
    const all = gaps.reduce((sum, { rows }) => sum + rows, 0) * year.stepH
    return [`${gaps.length} gaps ${how}, ${Number(all.toFixed(2))} h in all, first at ${sayRow(first.from, year)}`]
  })
  if (parts.length === 0) return
  tell(
    fromDays.length > 0 ? 'warning' : 'note',
    'climate.series-gaps-filled',
    `missing radiation was filled: ${parts.join('; ')}`,
    { source: GAP_LIMITS.source },
  )
}

function sayWeather({ weather, year }: Repairs, tell: Tell, worksheet: Worksheet): void {
  const { temperature, windMissing, snowMissing } = weather
  const filled = temperature.interpolated.length + temperature.fromMeanDay.length
  if (filled > 0)
    tell(
      temperature.fromMeanDay.length > 0 ? 'warning' : 'note',
      'climate.series-temperature-filled',
      `air temperature was missing in ${filled} of ${year.length} intervals: ${temperature.interpolated.length} filled by straight lines, ${temperature.fromMeanDay.length} by the mean day of their month (${nameRows([...temperature.interpolated, ...temperature.fromMeanDay], year)})`,
      { source: GAP_LIMITS.source },
    )
  if (windMissing.length > 0)
    worksheet.assume({
      path: 'site.climate.wind',
      value: WIND_WHEN_UNKNOWN_MS,
      unit: 'm/s',
      why: `wind is missing in ${windMissing.length} of ${year.length} intervals (${nameRows(windMissing, year)}); a light wind keeps the modules warm and the estimate low`,
      source: { document: '', standing: 'common practice, no source' },
    })
  if (year.columns.has('snowDepth') && snowMissing.length > 0)
    tell(
      'note',
      'climate.series-snow-missing',
      `snow depth is missing in ${snowMissing.length} of ${year.length} intervals (${nameRows(snowMissing, year)})`,
    )
}

function hours({ rows }: Gap, { stepH }: SeriesYear): string {
  return String(Number((rows * stepH).toFixed(2)))
}
