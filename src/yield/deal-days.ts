/** Kinds of day that make up one day, with their shares, which add up to 1. */
export type DayMixture = ReadonlyMap<number, number>

/**
 * Step of the order, in rounds. Irrational, so that places never repeat; one day is 0.61 of a round and seven are 0.24, so
 * that both a week and the four or five days of one weekday spread over the whole round. (The golden section spreads
 * weeks better, but weekdays half as well.)
 */
const STEP = Math.sqrt(13) - 3

/**
 * Gives each day of a month its kind, in an order that is always the same and well mixed: every week, and the same weekday
 * through the month, has dull and clear days in about the month's proportion.
 *
 * The days are ranked from dull to clear; the day of rank i stands for the stretch i to i+1 of the kinds laid end to
 * end, so that it may be part of two neighbouring kinds, and all kinds come with exactly their number of days.
 *
 * @param kindDays Days of the month of each kind, dullest first; their sum is a whole number.
 * @param month 0 to 11; months begin at different places of the order.
 */
export function dealDays(kindDays: ReadonlyMap<number, number>, month: number): DayMixture[] {
  const days = Math.round([...kindDays.values()].reduce((sum, each) => sum + each, 0))
  const ranked = Array.from({ length: days }, (_, rank) => stretch(kindDays, rank, days))
  const places = Array.from({ length: days }, (_, day) => ({ day, at: ((day + 1) * STEP + month / 12) % 1 }))
  places.sort((a, b) => a.at - b.at)
  const dealt = new Map(places.map(({ day }, rank) => [day, ranked[rank] ?? new Map<number, number>()]))
  return Array.from({ length: days }, (_, day) => dealt.get(day) ?? new Map<number, number>())
}

function stretch(kindDays: ReadonlyMap<number, number>, rank: number, days: number): DayMixture {
  const mixture = new Map<number, number>()
  let end = 0
  let left = 1
  for (const [kind, each] of kindDays) {
    const from = Math.max(end, rank)
    end += each
    const share = Math.min(Math.min(end, rank + 1) - from, left)
    if (share > 1e-9) mixture.set(kind, share)
    if (share > 0) left -= share
  }
  // The last day takes what rounding left over.
  if (rank === days - 1 && left > 0) {
    const last = [...mixture.keys()].at(-1)
    if (last !== undefined) mixture.set(last, (mixture.get(last) ?? 0) + left)
  }
  return mixture
}
