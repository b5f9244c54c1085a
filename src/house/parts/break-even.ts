import type { PaybackValues } from '../../money/index.js'
import { StageError } from '../../worksheet/index.js'
import type { BreakEvenValue, OptionValue, PartsRank } from './parts-values.js'
import { paybackAtPrices, type TrialHouse } from './try-combination.js'

/** Places of which it is told what the next one would have to cost. */
const BEST = 3

/** Higher is better; what never pays back is worst. */
export function scoreOf(
  by: PartsRank,
  of: Pick<OptionValue, 'npv_usd' | 'payback_years' | 'first_year_kwh' | 'price_usd'>,
): number {
  switch (by) {
    case 'npv':
      return of.npv_usd
    case 'payback':
      return of.payback_years === null ? -Infinity : -of.payback_years
    case 'energy':
      return of.first_year_kwh
    case 'price':
      return -of.price_usd
  }
}

/**
 * The highest price in whole cents at which an option is no worse than another, by the payback worked out at each price.
 *
 * @param at Payback of the option at a price, USD.
 * @param own Its own price, USD, at which it is worse.
 * @returns Undefined when it is worse even for nothing, or cannot be worked out at a price below its own.
 */
export async function breakEvenUsd(
  by: PartsRank,
  at: (usd: number) => Promise<PaybackValues>,
  own: number,
  winner: OptionValue,
): Promise<number | undefined> {
  const goal = scoreOf(by, winner)
  const holds = async (cents: number): Promise<boolean> => {
    const usd = cents / 100
    const { npv_usd, simple_payback, first_year_kwh } = await at(usd)
    const score = { npv_usd, payback_years: simple_payback.lasting_years, first_year_kwh, price_usd: usd }
    return scoreOf(by, score) >= goal
  }
  try {
    let low = 0
    let high = Math.round(own * 100)
    if (await holds(high)) return high / 100
    if (!(await holds(low))) return undefined
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2)
      if (await holds(middle)) low = middle
      else high = middle
    }
    return low / 100
  } catch (error) {
    if (error instanceof StageError) return undefined
    throw error
  }
}

/** What the next one of each of the best places would have to cost. */
export async function breakEvens(
  by: PartsRank,
  trial: TrialHouse,
  values: readonly OptionValue[],
): Promise<BreakEvenValue[]> {
  const found: BreakEvenValue[] = []
  for (const winner of values.slice(0, BEST)) {
    const next = values[winner.place]
    if (next === undefined) break
    const usd = await breakEvenUsd(by, await paybackAtPrices(trial, next), next.price_usd, winner)
    const change = usd === undefined || next.price_usd === 0 ? null : (100 * (usd - next.price_usd)) / next.price_usd
    found.push({
      place: winner.place,
      next_price_usd: usd ?? null,
      change_pct: change === null ? null : Number(change.toFixed(2)),
      says:
        usd === undefined
          ? `no price would bring place ${String(next.place)} to place ${String(winner.place)}`
          : `place ${String(next.place)} would be as good as place ${String(winner.place)} at ${usd.toFixed(2)} USD instead of ${next.price_usd.toFixed(2)} USD`,
    })
  }
  return found
}
