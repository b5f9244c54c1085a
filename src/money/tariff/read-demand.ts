import type { DemandCharge, DemandTier } from '../../project/index.js'
import { decimal, type Decimal } from '../../values/decimal/index.js'
import type { PriceReader } from './price-reader.js'
import type { DemandCharges, DemandTiers } from './rate-sheet.js'
import { indexOfId, tariffError, theOne } from './tariff-error.js'

/** Demand charges. @throws StageError for two prices, none, or tiers that go down. */
export function readDemand(
  charges: Readonly<Record<string, DemandCharge>>,
  seasons: readonly string[],
  periods: readonly string[],
  price: PriceReader,
): DemandCharges[] {
  return Object.entries(charges).map(([id, charge]) => {
    const place = `demand.${id}`
    const { usd_per_kw: flat, tiers } = charge
    theOne(place, { usd_per_kw: flat, tiers })
    return {
      id,
      tiers:
        tiers === undefined
          ? [{ upToKw: undefined, usdPerKw: price(`${place}.usd_per_kw`, flat ?? Number.NaN) }]
          : readDemandTiers(place, tiers, price),
      periods: (charge.periods ?? periods).map((p) => indexOfId(`${place}.periods`, 'period', p, periods)),
      seasons: (charge.seasons ?? seasons).map((s) => indexOfId(`${place}.seasons`, 'season', s, seasons)),
      months: charge.months,
    }
  })
}

function readDemandTiers(place: string, tiers: readonly DemandTier[], price: PriceReader): DemandTiers[] {
  let below: Decimal | undefined
  return tiers.map((tier, i) => {
    const at = `${place}.tiers.${String(i)}`
    const usdPerKw = price(`${at}.usd_per_kw`, tier.usd_per_kw)
    const isLast = i === tiers.length - 1
    if (isLast !== (tier.up_to_kw === undefined)) {
      throw tariffError(
        at,
        isLast
          ? 'the last tier has an upper end, so power above it has no price'
          : 'a tier that is not the last has no up_to_kw',
        isLast ? 'Remove up_to_kw of the last tier.' : 'State its upper end in kW, counted from zero.',
      )
    }
    if (tier.up_to_kw === undefined) return { upToKw: undefined, usdPerKw }
    const upToKw = decimal(tier.up_to_kw)
    if (below !== undefined && upToKw.lte(below)) {
      throw tariffError(
        at,
        `the tier ends at ${upToKw.toFixed()} kW, not above the tier before it (${below.toFixed()} kW)`,
        'State upper ends counted from zero (5, then 10), not sizes of blocks.',
      )
    }
    below = upToKw
    return { upToKw, usdPerKw }
  })
}
