import { REVIEW_DESIGN } from '../../../tables/fieldwork/index.js'
import { calendarDay } from '../../../values/index.js'
import type { FoundSign } from './sign.js'
import type { JudgedDay } from '../judged-day.js'

/** Whether a day has given nothing that the sun could have made. */
export function hasNoOutput({ kwh, kindsKwh, modelled }: JudgedDay): boolean {
  const clearest = kindsKwh[kindsKwh.length - 1]!
  // Weather under which nothing is expected, such as snow, tells nothing.
  if (modelled !== undefined && modelled.kwh < 0.05 * clearest) return false
  return clearest > 0 && kwh < REVIEW_DESIGN.noOutputShare * clearest
}

/**
 * Days without output. Even the dullest day gives a tenth of a clear one, so that a day without output is no weather but snow.
 *
 * @param snowIn Mean new snow of each month, in, January first; undefined where nobody knows.
 * @returns A sign for each run of days; days that were not measured end no run.
 * @source `npm run compare:faults`: least day of 2,000 simulated years 10 % of the clearest kind (computed)
 */
export function daysWithoutOutput(days: readonly JudgedDay[], snowIn: readonly number[] | undefined): FoundSign[] {
  const runs: JudgedDay[][] = []
  let open = false
  for (const day of days) {
    if (!hasNoOutput(day)) {
      open = false
      continue
    }
    if (open) runs.at(-1)?.push(day)
    else runs.push([day])
    open = true
  }
  return runs.map((run) => signOf(run, snowIn))
}

function signOf(run: readonly JudgedDay[], snowIn: readonly number[] | undefined): FoundSign {
  const [first, last] = [run[0]!.day, run.at(-1)!.day]
  const lostKwh = run.reduce((sum, day) => sum + day.expectedKwh, 0)
  const isWeatherKnown = run.every((day) => day.modelled !== undefined)
  const snow = isWeatherKnown ? 0 : Math.max(...run.map(({ day }) => snowChance(day, run.length, snowIn)))
  const count = `${run.length} day${run.length === 1 ? '' : 's'}`
  if (snow > 0.3) {
    return {
      kind: 'snow',
      fromDay: first,
      toDay: last,
      probability: snow,
      lostKwh,
      where: 'the whole system',
      says: `no output on ${count} in a season of snow: snow on the modules, or the system is off`,
      lookAt: 'see from the ground whether snow lies on the modules; if none does, see whether the inverter is on',
    }
  }
  return {
    kind: 'outage',
    fromDay: first,
    toDay: last,
    probability: 0.999 * (1 - snow),
    lostKwh,
    where: 'the whole system',
    says: `no output at all on ${count}: even the dullest day gives about a tenth of a clear one`,
    lookAt:
      'read the display of the inverter and its error, then look whether the breaker and the labelled disconnects are on; do not switch a breaker that has tripped on again',
  }
}

/** Chance that snow, and not a stop, keeps a run of days dark: days of cover that the snow of the month makes against stops. */
function snowChance(day: number, length: number, snowIn: readonly number[] | undefined): number {
  const { month } = calendarDay(day)
  const inches = snowIn === undefined ? 0 : Math.max(snowIn[month]!, snowIn[(month + 11) % 12]! / 2)
  if (inches < REVIEW_DESIGN.snowMonthIn) return 0
  const { snowDaysPerIn, snowLiesDays, stopsPerDay } = REVIEW_DESIGN
  const falls = (Math.min(1, (inches * snowDaysPerIn) / 30) / snowLiesDays) * Math.exp(-length / snowLiesDays / 2)
  return falls / (falls + stopsPerDay)
}
