import type { EnergyPrice, EnergyTier, TierAdder } from '../../project/index.js'
import { decimal } from '../../values/decimal/index.js'
import { own } from '../../values/index.js'
import type { PriceReader } from './price-reader.js'
import type { EnergyPrices, Threshold, Tier, TierAdders } from './rate-sheet.js'
import { indexOfId, tariffError, theOne } from './tariff-error.js'

/** Prices by season. @throws StageError for a season without prices, a tier that goes down, a period without a price. */
export function readEnergy(
  energy: Readonly<Record<string, EnergyPrice>>,
  seasons: readonly string[],
  periods: readonly string[],
  price: PriceReader,
): EnergyPrices[] {
  for (const id of Object.keys(energy)) indexOfId(`energy.${id}`, 'season', id, seasons)
  return seasons.map((season) => {
    const stated = own(energy, season)
    if (stated === undefined) {
      throw tariffError('energy', `there is no energy price for season ${season}`, `Add tariff.energy.${season}.`)
    }
    return readSeasonPrice(`energy.${season}`, stated, periods, price)
  })
}

function readSeasonPrice(
  place: string,
  stated: EnergyPrice,
  periods: readonly string[],
  price: PriceReader,
): EnergyPrices {
  const { usd_per_kwh: flat, tiers, periods_usd_per_kwh: byPeriod } = stated
  theOne(place, { usd_per_kwh: flat, tiers, periods_usd_per_kwh: byPeriod })
  if (byPeriod !== undefined) {
    return { kind: 'periods', usdPerKwh: readByPeriod(`${place}.periods_usd_per_kwh`, byPeriod, periods, price) }
  }
  if (tiers !== undefined) return { kind: 'tiers', tiers: readTiers(place, tiers, price) }
  return { kind: 'tiers', tiers: [{ upTo: undefined, usdPerKwh: price(`${place}.usd_per_kwh`, flat ?? Number.NaN) }] }
}

/** One price for every period, in the order of the periods. */
export function readByPeriod(
  place: string,
  byPeriod: Readonly<Record<string, number>>,
  periods: readonly string[],
  price: PriceReader,
): ReturnType<PriceReader>[] {
  for (const id of Object.keys(byPeriod)) indexOfId(place, 'period', id, periods)
  return periods.map((period) => {
    const usd = own(byPeriod, period)
    if (usd !== undefined) return price(`${place}.${period}`, usd)
    throw tariffError(place, `there is no price for period ${period}`, `Add ${period}.`)
  })
}

function readTiers(place: string, tiers: readonly EnergyTier[], price: PriceReader): Tier[] {
  let below: Threshold | undefined
  return tiers.map((tier, i) => {
    const at = `${place}.tiers.${String(i)}`
    const usdPerKwh = price(`${at}.usd_per_kwh`, tier.usd_per_kwh)
    const { up_to_kwh_per_month: month, up_to_kwh_per_day: day } = tier
    if (i === tiers.length - 1) {
      if (month === undefined && day === undefined) return { upTo: undefined, usdPerKwh }
      throw tariffError(
        at,
        'the last tier has an upper end, so use above it has no price',
        'Remove the upper end of the last tier.',
      )
    }
    theOne(at, { up_to_kwh_per_month: month, up_to_kwh_per_day: day })
    const upTo: Threshold = { kwh: decimal(month ?? day ?? 0), per: month === undefined ? 'day' : 'month' }
    if (below !== undefined && below.per !== upTo.per) {
      throw tariffError(at, 'tiers are stated partly per month and partly per day', 'Use one of the two for all tiers.')
    }
    if (below !== undefined && upTo.kwh.lte(below.kwh)) {
      throw tariffError(
        at,
        `the tier ends at ${upTo.kwh.toFixed()} kWh, not above the tier before it (${below.kwh.toFixed()} kWh)`,
        'State upper ends counted from zero (250, then 700), not sizes of blocks.',
      )
    }
    below = upTo
    return { upTo, usdPerKwh }
  })
}

export function readTierAdders(
  adders: Readonly<Record<string, TierAdder>>,
  seasons: readonly string[],
  price: PriceReader,
): TierAdders[] {
  return Object.entries(adders).map(([id, adder]) => {
    const place = `tier_adders.${id}`
    const { above_kwh_per_month: month, above_kwh_per_day: day } = adder
    theOne(place, { above_kwh_per_month: month, above_kwh_per_day: day })
    return {
      id,
      above: { kwh: decimal(month ?? day ?? 0), per: month === undefined ? 'day' : 'month' },
      usdPerKwh: price(`${place}.usd_per_kwh`, adder.usd_per_kwh),
      seasons: (adder.seasons ?? seasons).map((season) => indexOfId(`${place}.seasons`, 'season', season, seasons)),
    }
  })
}
