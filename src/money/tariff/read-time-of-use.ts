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

function hoursOf(rule: TimeOfUseRule): number[] {
  const count = (rule.to_hour - rule.from_hour + 24) % 24 || 24
  return Array.from({ length: count }, (_, i) => (rule.from_hour + i) % 24)
}

/**
 * Gives every season, kind of day and clock hour its period.
 *
 * @returns Table of `RateSheet.periodOfHour`.
 * @throws StageError when two rules give one hour to different periods, or an hour has none.
 * @limits An hour after midnight of a rule that runs over midnight counts as an hour of the same kind of day.
 */
export function readTimeOfUse(use: TimeOfUse, seasons: readonly string[], withHolidays: boolean): Uint8Array {
  const table = new Uint8Array(seasons.length * 4 * 24).fill(NONE)
  const nameHour = (cell: number): string => {
    const kind = DAY_KINDS[Math.floor(cell / 24) % 4] ?? ''
    return `${seasons[Math.floor(cell / 96)] ?? ''}, ${kind}, ${String(cell % 24)}:00`
  }
  for (const [r, rule] of use.rules.entries()) {
    const place = `time_of_use.rules.${String(r)}`
    const period = indexOfId(`${place}.period`, 'period', rule.period, use.periods)
    const inSeasons = (rule.seasons ?? seasons).map((id) => indexOfId(`${place}.seasons`, 'season', id, seasons))
    const kinds = new Set(rule.days.flatMap((days) => KINDS_OF[days]))
    for (const season of inSeasons) {
      for (const kind of kinds) {
        for (const hour of hoursOf(rule)) {
          const cell = (season * 4 + kind) * 24 + hour
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
    return table.map((cell) => (cell === NONE ? period : cell))
  }
  const bare = table.findIndex((cell, i) => cell === NONE && (withHolidays || Math.floor(i / 24) % 4 !== 3))
  if (bare >= 0) {
    throw tariffError(
      'time_of_use',
      `hours are not covered: no rule holds ${nameHour(bare)}`,
      'Add a rule for these hours, or name the period of all other hours in `otherwise`.',
    )
  }
  return table
}
