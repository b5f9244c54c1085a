import type { Season } from '../../project/index.js'
import { tariffError } from './tariff-error.js'
import { dayOfYear, daysInMonth } from '../../values/index.js'

/** Ids of the seasons and the season of each day of a 365-day year. */
export interface SeasonTable {
  readonly seasons: readonly string[]
  readonly seasonOfDay: Uint8Array
}

const NONE = 255

function dayOf(place: string, monthDay: string): number {
  const month = Number(monthDay.slice(0, 2))
  const day = Number(monthDay.slice(3, 5))
  if (day <= daysInMonth(month) || monthDay === '02-29') return dayOfYear(month, day)
  throw tariffError(place, `${monthDay} is not a day of the year`, 'Write month-day, such as 06-30.')
}

function monthDayOf(day: number): string {
  let month = 1
  let rest = day
  while (rest >= daysInMonth(month)) rest -= daysInMonth(month++)
  return `${String(month).padStart(2, '0')}-${String(rest + 1).padStart(2, '0')}`
}

/**
 * Lays the seasons over the year.
 *
 * @throws StageError when two seasons overlap or a day has none.
 */
export function readSeasons(seasons: Readonly<Record<string, Season>> | undefined): SeasonTable {
  if (seasons === undefined) return { seasons: ['all_year'], seasonOfDay: new Uint8Array(365) }
  const ids = Object.keys(seasons)
  const seasonOfDay = new Uint8Array(365).fill(NONE)
  for (const [index, [id, season]] of Object.entries(seasons).entries()) {
    const from = dayOf(`seasons.${id}.from`, season.from)
    const to = dayOf(`seasons.${id}.to`, season.to)
    for (let d = from, left = ((to - from + 365) % 365) + 1; left > 0; left--, d = (d + 1) % 365) {
      const taken = ids[seasonOfDay[d] ?? NONE]
      if (taken !== undefined) {
        throw tariffError(
          `seasons.${id}`,
          `seasons ${taken} and ${id} overlap: both hold ${monthDayOf(d)}`,
          'Let each season end on the day before the next one begins.',
        )
      }
      seasonOfDay[d] = index
    }
  }
  const bare = seasonOfDay.indexOf(NONE)
  if (bare >= 0) {
    throw tariffError(
      'seasons',
      `no season holds ${monthDayOf(bare)}`,
      'Let the seasons together cover the whole year.',
    )
  }
  return { seasons: ids, seasonOfDay }
}
