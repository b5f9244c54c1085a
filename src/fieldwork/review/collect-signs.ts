import type { ProductionSeries } from '../production/index.js'
import { REVIEW_DESIGN } from '../../tables/fieldwork/index.js'
import type { DayModel } from './day-model.js'
import type { Place } from './daylight.js'
import { litReadings, type HourModel } from './hour-model.js'
import { findDrops } from './level/find-drops.js'
import { yearOnYear, type YearOnYear } from './signs/degradation.js'
import { chanceOfFault } from './signs/chance.js'
import { expectedOf, levelOfSums, percentileOfDays } from './judge-days.js'
import type { JudgedDay } from './judged-day.js'
import { clearestOf, isMostlyKnown, seasonTolerance } from './known-weather.js'
import { dropSigns, lowLevel, wrongUnit, type SystemParts } from './signs/level-signs.js'
import { daysWithoutOutput, hasNoOutput } from './signs/no-output.js'
import { shadeHours } from './signs/shade-hours.js'
import type { FoundSign } from './signs/sign.js'
import { soilingRuns, type SoilingRun } from './signs/soiling-runs.js'
import { stoppedHours } from './signs/stopped-hours.js'
import { calendarDay } from '../../values/index.js'

/** What signs are looked for in. */
export interface SignBasis {
  readonly series: ProductionSeries
  /** Single days with what they may have given, in order. */
  readonly days: readonly JudgedDay[]
  readonly model: DayModel
  readonly hours: HourModel
  readonly place: Place
  readonly parts: SystemParts
  /** Mean new snow by month, in; undefined where nobody knows. */
  readonly snowIn: readonly number[] | undefined
  readonly correlation: number
  /** What no further day makes smaller: method and slow weather, relative standard deviation. */
  readonly lasting: number
  /** Loss with age that the project states or takes, % a year. */
  readonly statedAgeingPct: number
}

/** What was found, and what the present output rests on. */
export interface CollectedSigns {
  readonly signs: readonly FoundSign[]
  /** Output over expected: of healthy days, and of the last ones. */
  readonly mendedLevel: number
  readonly presentLevel: number
  readonly presentDays: readonly JudgedDay[]
  readonly ageing: YearOnYear | undefined
  /** Falls of clear days that are too weak for a sign. */
  readonly hints: readonly SoilingRun[]
}

/**
 * Looks for every kind of sign, the plainest first: what one explains is taken out before the next is looked for.
 *
 * @limits What a table cannot show (hours of days, stretches of months) is not looked for; `notLookedFor` lists it.
 */
export function collectSigns(basis: SignBasis): CollectedSigns {
  const { days, series } = basis
  const isMostly = isMostlyKnown(days)
  const unit = wrongUnit(days, levelOfSums(days), series.stepMin)
  if (unit !== undefined && unit.probability > 0.9) {
    const level = levelOfSums(days)
    return { signs: [unit], mendedLevel: level, presentLevel: level, presentDays: days, ageing: undefined, hints: [] }
  }
  const lit = litReadings(series, basis.hours, basis.model, basis.place)
  const dark = daysWithoutOutput(days, basis.snowIn)
  const darkDays = new Set(days.filter(hasNoOutput).map(({ day }) => day))
  const stops = stoppedHours(lit, darkDays)
  const stopped = (day: number): boolean =>
    stops.some(({ kind, fromDay, toDay }) => kind === 'outage' && day >= fromDay && day <= toDay)
  const alive = days.filter(({ day }) => !darkDays.has(day) && !stopped(day))
  const least = isMostly ? REVIEW_DESIGN.dropEvidenceWeather : REVIEW_DESIGN.dropEvidence
  const drops = findDrops(alive, { correlation: basis.correlation, tolerance: seasonTolerance(alive), evidence: least })
  const isSnowy = (day: number): boolean => (basis.snowIn?.[calendarDay(day).month] ?? 0) >= REVIEW_DESIGN.snowMonthIn
  const lower = dropSigns(drops, alive, basis.parts, least, isSnowy)
  const isDropped = alive.map((_, at) => drops.some((drop) => at >= drop.from && at < drop.end))
  const usual = alive.filter((_, at) => !isDropped[at])
  const level = levelOfSums(usual)
  const low = lowLevel(usual, level, percentileOfDays(usual, basis.correlation, basis.lasting), expectedOf(usual))
  const bestOfYear = Math.max(...basis.model.kindsKwh.map((kinds) => kinds[kinds.length - 1]!))
  const isSeason = (day: number, clearKwh: number): boolean =>
    isMostly || (clearKwh > REVIEW_DESIGN.soilingSeason * bestOfYear && !isSnowy(day))
  const clearest = clearestOf(days)
  const runs = soilingRuns(
    usual.flatMap(({ day, kwh }) => {
      const clearKwh = clearest(day) ?? 0
      return clearKwh > 0 && isSeason(day, clearKwh) ? [{ day, kwh, ratio: kwh / clearKwh }] : []
    }),
    isMostly ? REVIEW_DESIGN.soilingLossWeather : REVIEW_DESIGN.soilingLoss,
  )
  const isClear = ({ chance, lossPerWeek }: SoilingRun): boolean =>
    isMostly || (chance <= REVIEW_DESIGN.soilingSureChance && lossPerWeek >= REVIEW_DESIGN.soilingSurePerWeek)
  const shade = shadeHours(lit)
  const ageing = yearOnYear(usual)
  const last = drops.find((drop) => drop.end === alive.length)
  const presentDays = last === undefined ? usual : alive.slice(last.from, last.end)
  return {
    signs: [
      ...dark,
      ...stops,
      ...lower,
      ...(low === undefined ? [] : [low]),
      ...(unit === undefined ? [] : [unit]),
      ...runs.filter(isClear).map((run) => soilingSign(run, usual)),
      ...shade,
      ...ageingSign(ageing, usual, basis.statedAgeingPct),
    ],
    mendedLevel: low === undefined ? level : 1,
    presentLevel: last === undefined ? level : level * (last.level / last.usualLevel),
    presentDays,
    ageing,
    hints: runs.filter((run) => !isClear(run)),
  }
}

function soilingSign(run: SoilingRun, days: readonly JudgedDay[]): FoundSign {
  const measured = days.reduce((sum, { day, kwh }) => (day >= run.fromDay && day <= run.toDay ? sum + kwh : sum), 0)
  const back = run.hasRecovered ? ', and comes back within a fortnight, as after rain' : ''
  return {
    kind: 'soiling',
    fromDay: run.fromDay,
    toDay: run.toDay,
    probability: chanceOfFault(run.hasRecovered ? 0.0005 : 0.002),
    lostKwh: (measured * run.lossOverall) / 2,
    where: 'losses',
    says: `what the clearest day of each week gives falls by ${(100 * run.lossPerWeek).toFixed(1)} % a week, ${(100 * run.lossOverall).toFixed(0)} % over ${run.weeks} weeks${back}`,
    lookAt: 'look for dirt, leaves and growing plants from the ground; see whether it recovers after heavy rain',
  }
}

function ageingSign(ageing: YearOnYear | undefined, days: readonly JudgedDay[], statedPct: number): FoundSign[] {
  if (ageing === undefined || ageing.low_pct_per_year < Math.max(1, 2 * statedPct)) return []
  const loss = (ageing.loss_pct_per_year - statedPct) / 100
  const years = (days.at(-1)!.day - days[0]!.day) / 365
  return [
    {
      kind: 'degradation',
      fromDay: days[0]!.day,
      toDay: days.at(-1)!.day,
      probability: 0.97,
      lostKwh: (expectedOf(days) * loss * years) / 2,
      where: 'the whole system',
      says: `days a year apart fall by ${ageing.loss_pct_per_year.toFixed(1)} % a year (95 %: ${ageing.low_pct_per_year.toFixed(1)} to ${ageing.high_pct_per_year.toFixed(1)}), against ${statedPct.toFixed(1)} % stated`,
      lookAt: 'look for dirt that stays and shade that has grown; hold the loss against the warranty of the modules',
    },
  ]
}
