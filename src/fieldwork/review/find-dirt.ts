import { REVIEW_DESIGN } from '../../tables/fieldwork/index.js'
import type { DayModel } from './day-model.js'
import type { JudgedDay } from './judged-day.js'
import { clearestOf } from './known-weather.js'
import { chanceOfFault } from './signs/chance.js'
import type { FoundSign } from './signs/sign.js'
import { soilingRuns, type SoilingRun } from './signs/soiling-runs.js'

/** What dirt is looked for with. */
export interface DirtBasis {
  /** All days of the table: one rule of what is clear holds for all. */
  readonly days: readonly JudgedDay[]
  readonly model: DayModel
  readonly isSnowy: (day: number) => boolean
  /** Whether most days have weather of their own. */
  readonly isKnown: boolean
}

/** Healthy systems that show such a fall in a year, as a share, when the output comes back after it and when it does not. */
const FALSE_RECOVERED = 0.0005
const FALSE_LASTING = 0.002

/** Falls that go on for weeks. Without weather only in bright seasons without snow, as the others do not tell clear days from dull ones. */
export function dirtRuns(among: readonly JudgedDay[], { days, model, isSnowy, isKnown }: DirtBasis): SoilingRun[] {
  const bestOfYear = Math.max(...model.kindsKwh.map((kinds) => kinds[kinds.length - 1]!))
  const clearest = clearestOf(days)
  const isSeason = (day: number, clearKwh: number): boolean =>
    isKnown || (clearKwh > REVIEW_DESIGN.soilingSeason * bestOfYear && !isSnowy(day))
  const observed = among.flatMap(({ day, kwh }) => {
    const clearKwh = clearest(day) ?? 0
    return clearKwh > 0 && isSeason(day, clearKwh) ? [{ day, kwh, ratio: kwh / clearKwh }] : []
  })
  return soilingRuns(observed, isKnown ? REVIEW_DESIGN.soilingLossWeather : REVIEW_DESIGN.soilingLoss, isKnown)
}

/** Whether a fall is a sign by itself; a weaker one is a note. */
export function isClearRun({ chance, lossPerWeek }: SoilingRun, isKnown: boolean): boolean {
  return isKnown || (chance <= REVIEW_DESIGN.soilingSureChance && lossPerWeek >= REVIEW_DESIGN.soilingSurePerWeek)
}

export function dirtSign(run: SoilingRun, days: readonly JudgedDay[], isKnown: boolean): FoundSign {
  const measured = days.reduce((sum, { day, kwh }) => (day >= run.fromDay && day <= run.toDay ? sum + kwh : sum), 0)
  const back = run.hasRecovered ? ', and comes back within a fortnight, as after rain' : ''
  const what = isKnown
    ? 'what each week gives of what its weather lets expect'
    : 'what the clearest day of each week gives'
  return {
    kind: 'soiling',
    fromDay: run.fromDay,
    toDay: run.toDay,
    probability: chanceOfFault(run.hasRecovered ? FALSE_RECOVERED : FALSE_LASTING),
    lostKwh: (measured * run.lossOverall) / 2,
    where: 'losses',
    says: `${what} falls by ${(100 * run.lossPerWeek).toFixed(1)} % a week, ${(100 * run.lossOverall).toFixed(0)} % over ${run.weeks} weeks${back}`,
    lookAt: 'look for dirt, leaves and growing plants from the ground; see whether it recovers after heavy rain',
  }
}
