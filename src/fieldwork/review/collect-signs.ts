import type { ProductionSeries } from '../production/index.js'
import { REVIEW_DESIGN } from '../../tables/fieldwork/index.js'
import type { DayModel } from './day-model.js'
import type { Place } from './daylight.js'
import { litReadings, type HourModel } from './hour-model.js'
import { findDrops } from './level/find-drops.js'
import { yearOnYear, type YearOnYear } from './signs/degradation.js'
import { expectedOf, levelOfSums, percentileOfDays } from './judge-days.js'
import { dirtRuns, dirtSign, isClearRun, type DirtBasis } from './find-dirt.js'
import type { JudgedDay } from './judged-day.js'
import { isMostlyKnown, seasonTolerance } from './known-weather.js'
import { dropSigns, lowLevel, wrongUnit, type SystemParts } from './signs/level-signs.js'
import { daysWithoutOutput, hasNoOutput } from './signs/no-output.js'
import { shadeHours } from './signs/shade-hours.js'
import type { FoundSign } from './signs/sign.js'
import type { SoilingRun } from './signs/soiling-runs.js'
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
  const isSnowy = (day: number): boolean => (basis.snowIn?.[calendarDay(day).month] ?? 0) >= REVIEW_DESIGN.snowMonthIn
  const dirt: DirtBasis = { days, model: basis.model, isSnowy, isKnown: isMostly }
  // A fall that goes on looks like a lower stretch where the weather is known; there the better of the two is looked for first.
  const before = isMostly ? dirtRuns(alive, dirt) : []
  const searched = alive.filter(({ day }) => before.every(({ fromDay, toDay }) => day < fromDay || day > toDay))
  const tolerance = seasonTolerance(searched)
  const drops = findDrops(searched, { correlation: basis.correlation, tolerance, evidence: least })
  const lower = dropSigns(drops, searched, basis.parts, least, isSnowy)
  const dropped = new Set(drops.flatMap((drop) => searched.slice(drop.from, drop.end)))
  const usual = alive.filter((day) => !dropped.has(day))
  const runs = isMostly ? before : dirtRuns(usual, dirt)
  const level = levelOfSums(usual)
  const low = lowLevel(usual, level, percentileOfDays(usual, basis.correlation, basis.lasting), expectedOf(usual))
  const shade = shadeHours(lit)
  const ageing = yearOnYear(usual)
  const last = drops.find((drop) => searched[drop.end - 1] === alive.at(-1))
  const presentDays = last === undefined ? usual : searched.slice(last.from, last.end)
  return {
    signs: [
      ...dark,
      ...stops,
      ...lower,
      ...(low === undefined ? [] : [low]),
      ...(unit === undefined ? [] : [unit]),
      ...runs.filter((run) => isClearRun(run, isMostly)).map((run) => dirtSign(run, usual, isMostly)),
      ...shade,
      ...ageingSign(ageing, usual, basis.statedAgeingPct),
    ],
    mendedLevel: low === undefined ? level : 1,
    presentLevel: last === undefined ? level : level * (last.level / last.usualLevel),
    presentDays,
    ageing,
    hints: runs.filter((run) => !isClearRun(run, isMostly)),
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
