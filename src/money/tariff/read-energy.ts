import type { EnergyPrice, EnergyTier, TierAdder } from '../../project/index.js'
import { ZERO, decimal, type Decimal } from '../../values/decimal/index.js'
import { own } from '../../values/index.js'
import type { PriceReader } from './price-reader.js'
import type { EnergyPrices, Threshold, Tier, TierAdders } from './rate-sheet.js'
import { indexOfId, tariffError, theOne } from './tariff-error.js'

/**
 * Prices by season.
 *
 * @param used By season: whether each period has hours in it.
 * @throws StageError for a season without prices, a tier that goes down, a period with hours and without a price.
 */
export function readEnergy(
  energy: Readonly<Record<string, EnergyPrice>>,
  seasons: readonly string[],
  periods: readonly string[],
  used: readonly (readonly boolean[])[],
  price: PriceReader,
): EnergyPrices[] {
  for (const id of Object.keys(energy)) indexOfId(`energy.${id}`, 'season', id, seasons)
  return seasons.map((season, s) => {
    const stated = own(energy, season)
    if (stated === undefined) {
      throw tariffError('energy', `there is no energy price for season ${season}`, `Add tariff.energy.${season}.`)
    }
    return readSeasonPrice(`energy.${season}`, stated, { ids: periods, used: used[s] ?? [] }, price)
  })
}

/** The periods of a tariff, and which of them have hours in one season. */
interface SeasonPeriods {
  readonly ids: readonly string[]
  readonly used: readonly boolean[]
}

function readSeasonPrice(place: string, stated: EnergyPrice, periods: SeasonPeriods, price: PriceReader): EnergyPrices {
  const { usd_per_kwh: flat, tiers, periods_usd_per_kwh: byPeriod, periods_tiers: ladders, tiers_count } = stated
  theOne(place, { usd_per_kwh: flat, tiers, periods_usd_per_kwh: byPeriod, periods_tiers: ladders })
  if (tiers_count !== undefined && ladders === undefined) {
    throw tariffError(
      `${place}.tiers_count`,
      'tiers_count belongs to periods_tiers, which is not stated',
      'Remove it; `tiers` always count all kWh of the season in the bill.',
    )
  }
  if (ladders !== undefined) {
    return readPeriodTiers(`${place}.periods_tiers`, ladders, tiers_count !== 'each_period', periods, price)
  }
  if (byPeriod !== undefined) {
    const at = `${place}.periods_usd_per_kwh`
    return { kind: 'periods', usdPerKwh: readByPeriod(at, byPeriod, periods.ids, price, periods.used) }
  }
  if (tiers !== undefined) return { kind: 'tiers', tiers: readTiers(`${place}.tiers`, tiers, price) }
  return { kind: 'tiers', tiers: [{ upTo: undefined, usdPerKwh: price(`${place}.usd_per_kwh`, flat ?? Number.NaN) }] }
}

/** One price for every period, in the order of the periods; a period that is not used needs none. */
export function readByPeriod(
  place: string,
  byPeriod: Readonly<Record<string, number>>,
  periods: readonly string[],
  price: PriceReader,
  used: readonly boolean[] = periods.map(() => true),
): Decimal[] {
  for (const id of Object.keys(byPeriod)) indexOfId(place, 'period', id, periods)
  return periods.map((period, p) => {
    const usd = own(byPeriod, period)
    if (usd !== undefined) return price(`${place}.${period}`, usd)
    if (used[p] === false) return ZERO
    throw tariffError(place, `there is no price for period ${period}`, `Add ${period}.`)
  })
}

/** Tiers by period. @throws StageError when they count the whole bill and do not have the same ends. */
function readPeriodTiers(
  place: string,
  ladders: Readonly<Record<string, readonly EnergyTier[]>>,
  shared: boolean,
  periods: SeasonPeriods,
  price: PriceReader,
): EnergyPrices {
  for (const id of Object.keys(ladders)) indexOfId(place, 'period', id, periods.ids)
  const read = periods.ids.map((period, p) => {
    const tiers = own(ladders, period)
    if (tiers !== undefined) return readTiers(`${place}.${period}`, tiers, price)
    if (periods.used[p] === false) return []
    throw tariffError(place, `there are no tiers for period ${period}`, `Add ${period}.`)
  })
  const ends = (tiers: readonly Tier[]): string =>
    tiers.flatMap(({ upTo }) => (upTo === undefined ? [] : [`${upTo.kwh.toFixed()} kWh per ${upTo.per}`])).join(', ') ||
    'none'
  const stated = read.filter((tiers, p) => tiers.length > 0 && periods.used[p] !== false)
  const [first = [], ...others] = stated
  const other = others.find((tiers) => ends(tiers) !== ends(first))
  if (shared && other !== undefined) {
    throw tariffError(
      place,
      `the tiers of the periods end at different amounts (${ends(first)}; ${ends(other)}), so they cannot count the whole bill`,
      'Give all periods the same ends, or state tiers_count: each_period when the rate sheet counts each period by itself.',
    )
  }
  return { kind: 'period tiers', ladders: read, shared }
}

function readTiers(place: string, tiers: readonly EnergyTier[], price: PriceReader): Tier[] {
  let below: Threshold | undefined
  return tiers.map((tier, i) => {
    const at = `${place}.${String(i)}`
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
