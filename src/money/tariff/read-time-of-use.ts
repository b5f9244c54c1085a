import type { TimeOfUse, TimeOfUseRule } from '../../project/index.js'
import { DAY_KINDS } from './rate-sheet.js'
import { indexOfId, tariffError } from './tariff-error.js'

const KINDS_OF: Readonly<Record<TimeOfUseRule['days'][number], readonly number[]>> = {
  every_day: [0, 1, 2, 3],
  weekdays: [0],
  weekends: [1, 2],
  saturdays: [1],
  sundays: [2],
  holidays: [3],
}
const NONE = 255

/** Parts of the day of a rule. */
function partsOf(rule: TimeOfUseRule, perHour: number): number[] {
  const day = 24 * perHour
  const from = rule.from_hour * perHour
  const count = (rule.to_hour * perHour - from + day) % day || day
  return Array.from({ length: count }, (_, i) => (from + i) % day)
}

/** Which period each part of a day belongs to, as `RateSheet` has it. */
export interface PeriodTable {
  readonly partsPerHour: 1 | 4
  readonly periodOfHour: Uint8Array
}

/** By season: whether each period has hours in it. */
export function usedPeriods(table: PeriodTable, seasons: number, periods: number, withHolidays: boolean): boolean[][] {
  const day = 24 * table.partsPerHour
  return Array.from({ length: seasons }, (_, season) => {
    const kinds = withHolidays ? 4 : 3
    const own = table.periodOfHour.subarray(season * 4 * day, (season * 4 + kinds) * day)
    return Array.from({ length: periods }, (_, period) => own.includes(period))
  })
}

/**
 * Gives every season, kind of day and clock hour, or quarter of one, its period.
 *
 * @throws StageError when two rules give one hour to different periods, or an hour has none.
 * @limits An hour after midnight of a rule that runs over midnight counts as an hour of the same kind of day.
 */
export function readTimeOfUse(use: TimeOfUse, seasons: readonly string[], withHolidays: boolean): PeriodTable {
  const isWhole = use.rules.every((rule) => Number.isInteger(rule.from_hour) && Number.isInteger(rule.to_hour))
  const partsPerHour = isWhole ? 1 : 4
  const day = 24 * partsPerHour
  const table = new Uint8Array(seasons.length * 4 * day).fill(NONE)
  const nameHour = (cell: number): string => {
    const kind = DAY_KINDS[Math.floor(cell / day) % 4] ?? ''
    const minutes = ((cell % day) % partsPerHour) * 15
    const clock = `${String(Math.floor((cell % day) / partsPerHour))}:${String(minutes).padStart(2, '0')}`
    return `${seasons[Math.floor(cell / (4 * day))] ?? ''}, ${kind}, ${clock}`
  }
  for (const [r, rule] of use.rules.entries()) {
    const place = `time_of_use.rules.${String(r)}`
    const period = indexOfId(`${place}.period`, 'period', rule.period, use.periods)
    const inSeasons = (rule.seasons ?? seasons).map((id) => indexOfId(`${place}.seasons`, 'season', id, seasons))
    const kinds = new Set(rule.days.flatMap((days) => KINDS_OF[days]))
    for (const season of inSeasons) {
      for (const kind of kinds) {
        for (const part of partsOf(rule, partsPerHour)) {
          const cell = (season * 4 + kind) * day + part
          const taken = table[cell] ?? NONE
          if (taken !== NONE && taken !== period) {
            throw tariffError(
              place,
              `${nameHour(cell)} belongs to ${use.periods[taken] ?? ''} and to ${rule.period}`,
              'Let the rules not overlap.',
            )
          }
          table[cell] = period
        }
      }
    }
  }
  const otherwise = use.otherwise
  if (otherwise !== undefined) {
    const period = indexOfId('time_of_use.otherwise', 'period', otherwise, use.periods)
    return { partsPerHour, periodOfHour: table.map((cell) => (cell === NONE ? period : cell)) }
  }
  const bare = table.findIndex((cell, i) => cell === NONE && (withHolidays || Math.floor(i / day) % 4 !== 3))
  if (bare >= 0) {
    throw tariffError(
      'time_of_use',
      `hours are not covered: no rule holds ${nameHour(bare)}`,
      'Add a rule for these hours, or name the period of all other hours in `otherwise`.',
    )
  }
  return { partsPerHour, periodOfHour: table }
}
