import { REVIEW_DESIGN, REVIEW_SOURCE, REVIEW_THRESHOLDS } from '../../tables/fieldwork/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { ProductionSeries } from '../production/index.js'
import type { CountedDays } from './count-days.js'
import type { DayModel } from './day-model.js'
import type { Place } from './daylight.js'
import type { ModuleReview, ReviewValues } from './review-values.js'
import { flatTop } from './signs/clipping.js'
import { measuredClockShift } from './signs/clock-shift.js'
import type { ObservedDay } from './signs/observed-day.js'
import { soilingTrend } from './signs/soiling.js'
import { dateText, type Kilowatts } from '../../values/index.js'

export interface SignRequest {
  readonly series: ProductionSeries
  readonly counted: CountedDays
  readonly observed: readonly ObservedDay[]
  readonly model: DayModel
  readonly place: Place
  readonly modules: readonly ModuleReview[]
  readonly ratedAcKw: Kilowatts
  /** Whether dirt is told already. */
  readonly hasDirt?: boolean
}

/** Tables longer than this are looked through for dirt stretch by stretch: over a year the season itself makes a trend, days. */
export const SHORT_DAYS = 182

/** Looks for gaps, dirt, dead and weak modules, clipping and a wrong clock. */
export function findSigns(request: SignRequest, worksheet: Worksheet): void {
  const { series, counted, observed, model, place, modules } = request
  tellGaps(counted, worksheet)
  tellDirt(request, worksheet)
  tellModules(modules, worksheet)
  tellFlatTop(request, worksheet)
  const shift = measuredClockShift(series, observed, model, place)
  if (shift !== undefined && Math.abs(shift.shiftH) >= REVIEW_THRESHOLDS.clockShiftH) {
    const hours = Math.abs(shift.shiftH)
    const likely =
      shift.shiftH > 0 && Math.abs(hours - 1) < 0.3
        ? 'a clock on daylight saving time (declare clock: local), or stamps at the end of hours (declare stamps_mark: ending)'
        : 'the clock of the logger, the time zone (clock: utc?), or the direction of the arrays in the project file'
    worksheet.find({
      severity: 'warning',
      id: 'output.clock-shift',
      message: `the middle of ${shift.days} clear days comes ${hours.toFixed(1)} h ${shift.shiftH > 0 ? 'later' : 'earlier'} than the sun allows`,
      where: 'production.clock',
      source: REVIEW_SOURCE,
      fix: `check ${likely}`,
    })
  }
}

function tellDirt({ observed, hasDirt = false }: SignRequest, worksheet: Worksheet): void {
  const isLong = (observed.at(-1)?.day ?? 0) - (observed[0]?.day ?? 0) > SHORT_DAYS
  const soiling = hasDirt || isLong ? undefined : soilingTrend(observed)
  if (soiling === undefined) return
  const { overall, perWeek } = REVIEW_DESIGN.soilingLoss
  if (soiling.lossOverall < overall || soiling.lossPerWeek < perWeek) return
  worksheet.find({
    severity: 'warning',
    id: 'output.dirt',
    message: `what the clearest day of each week gives falls by ${(100 * soiling.lossPerWeek).toFixed(1)} % a week, ${(100 * soiling.lossOverall).toFixed(0)} % over ${soiling.weeks} weeks (chance without a trend: ${(100 * soiling.chance).toFixed(1)} %)`,
    where: 'losses',
    source: REVIEW_SOURCE,
    fix: 'look for dirt, leaves and growing plants from the ground; see whether it recovers after heavy rain',
  })
}

function tellGaps({ missing, leftOutKwh }: CountedDays, worksheet: Worksheet): void {
  if (missing.length === 0) return
  const runs: { from: number; to: number }[] = []
  for (const day of missing) {
    const last = runs.at(-1)
    if (last !== undefined && last.to === day - 1) last.to = day
    else runs.push({ from: day, to: day })
  }
  const list = runs
    .slice(0, 5)
    .map(({ from, to }) => (from === to ? dateText(from) : `${dateText(from)} to ${dateText(to)}`))
  const left = leftOutKwh > 0 ? `; ${leftOutKwh.toFixed(1)} kWh read on such days are left out` : ''
  worksheet.find({
    severity: 'note',
    id: 'output.days-missing',
    message: `${missing.length} day${missing.length === 1 ? '' : 's'} without complete readings: ${list.join(', ')}${runs.length > 5 ? ' ...' : ''}${left}`,
    where: 'production',
    fix: 'neither the measured nor the expected energy of these days is counted',
  })
}

function tellModules(modules: readonly ModuleReview[], worksheet: Worksheet): void {
  for (const module of modules) {
    if (module.dead_since !== null) {
      worksheet.find({
        severity: 'warning',
        id: 'output.module-dead',
        message: `module ${module.id} has given nothing since ${module.dead_since} while its neighbours work`,
        where: 'arrays',
        source: REVIEW_SOURCE,
        fix: 'have its inverter, connectors and communication checked; a silent communication looks the same in the data',
      })
    } else if (module.relative_pct < 100 * REVIEW_THRESHOLDS.weakModuleShare) {
      worksheet.find({
        severity: 'warning',
        id: 'output.module-weak',
        message: `module ${module.id} gives ${module.relative_pct.toFixed(0)} % of what its place should give beside its neighbours`,
        where: 'arrays',
        source: REVIEW_SOURCE,
        fix: 'look for shade that the project file does not know, dirt on this module, or a failed part of it',
      })
    }
  }
}

function tellFlatTop({ series, ratedAcKw }: SignRequest, worksheet: Worksheet): void {
  const top = flatTop(series)
  if (top === undefined) return
  const low = top.levelKw < 0.9 * ratedAcKw
  worksheet.find({
    severity: low ? 'warning' : 'note',
    id: 'output.clipping',
    message: `the power stays at ${top.levelKw.toFixed(2)} kW for ${top.hours.toFixed(1)} h on ${top.days} days; the inverters are rated ${ratedAcKw.toFixed(2)} kW together`,
    where: 'equipment.inverters',
    source: REVIEW_SOURCE,
    fix: low
      ? 'ask the installer or utility for an export or power limit that is set below the rating'
      : 'this is the limit of the inverters, as designed; the estimate counts it in',
  })
}

/** Added where months are read: nothing in the table tells that one of them was not whole. */
const WHOLE_MONTHS = '; leave out a month in which the system was switched on or not read to its end'

/** Says where the measured sum lies in the range. */
export function judgeSum(
  values: Pick<
    ReviewValues,
    'file' | 'percentile' | 'percentile_of_weather' | 'measured_kwh' | 'expected' | 'measured_over_expected'
  >,
  worksheet: Worksheet,
): void {
  const { percentile, percentile_of_weather: weather, measured_kwh: measured, expected } = values
  const range = `${expected.p10_kwh.toFixed(0)} to ${expected.p90_kwh.toFixed(0)} kWh`
  const share = `${measured.toFixed(0)} kWh is ${(100 * values.measured_over_expected).toFixed(0)} % of what is expected`
  if (percentile < REVIEW_THRESHOLDS.lowPercentile) {
    const sure = percentile < REVIEW_THRESHOLDS.veryLowPercentile
    worksheet.find({
      severity: 'warning',
      id: 'output.below-range',
      message: `${share}, below the range of 80 % of cases (${range}): percentile ${percentile.toFixed(1)}`,
      where: '',
      source: REVIEW_SOURCE,
      fix: `${
        sure
          ? 'so little is hardly luck: check inverter lights, breakers, error messages and new shade'
          : 'one good system in ten is here by luck: compare again when more days are in, best with the weather of these days (--weather)'
      }${values.file.resolution === 'month' ? WHOLE_MONTHS : ''}`,
    })
  } else if (weather !== null && weather < REVIEW_THRESHOLDS.lowPercentile) {
    worksheet.find({
      severity: 'note',
      id: 'output.low-for-the-weather',
      message: `${share}: low for weather luck alone (percentile ${weather.toFixed(1)}), but within what is known of the method (percentile ${percentile.toFixed(1)})`,
      where: '',
      source: REVIEW_SOURCE,
    })
  } else if (percentile > 100 - REVIEW_THRESHOLDS.veryLowPercentile) {
    worksheet.find({
      severity: 'note',
      id: 'output.above-range',
      message: `${share}, more than nearly any weather gives (${range}): percentile ${percentile.toFixed(1)}`,
      where: '',
      source: REVIEW_SOURCE,
      fix: 'be glad, or check the scale of the meter and the number of modules in the project file',
    })
  }
}
