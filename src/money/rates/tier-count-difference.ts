import type { Tariff } from '../../project/index.js'
import { billFromPeriods } from '../bill/index.js'
import { readTariff } from '../tariff/index.js'
import type { Carried } from './carried.js'
import type { RateSeason } from './map-hours.js'

/** Tells, for one bill, what it matters whether tiers count the whole bill or each period by itself. */
export function tellTierCount(tariff: Tariff, seasons: readonly RateSeason[], carried: Carried): void {
  for (const season of seasons) {
    const price = tariff.energy[season.id]
    const ladders = Object.values(price?.periods_tiers ?? {})
    const month = season.months[0] ?? 1
    const ends = ladders.flat().map((tier) => tier.up_to_kwh_per_month ?? (tier.up_to_kwh_per_day ?? 0) * 30)
    const kwh = Math.round(1.5 * Math.max(...ends))
    const periods = tariff.time_of_use?.periods ?? []
    const share = Math.floor(kwh / season.periods.length)
    const use = Object.fromEntries(periods.map((id) => [id, season.periods.includes(id) ? share : 0]))
    const totalOf = (tiers_count: 'whole_bill' | 'each_period'): string => {
      const energy = { ...tariff.energy, [season.id]: { ...price, tiers_count } }
      const sheet = readTariff({ name: tariff.name, rounding: 'total', ...periodsOf(tariff), energy })
      return billFromPeriods(sheet, month, 30, use).total_usd.toFixed(2)
    }
    carried.warn(
      'rates.tier-count',
      'energyratestructure',
      `the record does not say whether the tiers of ${season.id} count all kWh of the bill or those of each period: all is taken; energy of ${share} kWh in each of ${season.periods.length} periods in 30 days is then ${totalOf('whole_bill')} USD, and ${totalOf('each_period')} USD the other way`,
      'Look at the rate sheet, then state --tiers-count whole_bill or each_period.',
    )
  }
}

function periodsOf(tariff: Tariff): Pick<Tariff, 'seasons' | 'time_of_use' | 'negative_prices'> {
  const { seasons, time_of_use, negative_prices } = tariff
  return {
    ...(seasons === undefined ? {} : { seasons }),
    ...(time_of_use === undefined ? {} : { time_of_use }),
    ...(negative_prices === undefined ? {} : { negative_prices }),
  }
}
