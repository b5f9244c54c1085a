import type { PaybackValues } from '../../money/index.js'
import { StageError } from '../../worksheet/index.js'
import type { OptionValue, PartsRank } from './parts-values.js'

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
