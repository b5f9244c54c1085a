import { decimal } from '../../values/decimal/index.js'
import type { Carried } from './carried.js'
import type { RateStructure, RateTier } from './rate-record.js'

/** A tier with its price: rate and rider together. */
export interface PricedTier {
  /** Upper end counted from zero, undefined for none. */
  readonly upTo: number | undefined
  readonly usd: number
  readonly sell: number | undefined
}

/** Ends above this stand for none; records have 1e38 and 1e9. */
const NO_END = 1e9

/** Price of a tier, USD per unit: its rate and its rider, which may be below zero. */
export function tierPrice({ rate = 0, adj = 0 }: RateTier): number {
  return decimal(rate).plus(decimal(adj)).toNumber()
}

/** Whether any price of a structure is not zero. */
export function hasPrice(structure: RateStructure | undefined): boolean {
  return structure?.some((tiers) => tiers.some((tier) => tierPrice(tier) !== 0)) === true
}

/** Tiers of one period; what is wrong with them is told as impossible, as no price could be right. */
export function readTiers(field: string, tiers: readonly RateTier[], unit: string, carried: Carried): PricedTier[] {
  let below = 0
  if (tiers.length === 0) carried.impossible(field, 'the period has no tiers', 'Take its price from the rate sheet.')
  return tiers.map((tier, t) => {
    const at = `${field}[${t}]`
    if (tier.rate === undefined && tier.adj === undefined && tier.sell === undefined)
      carried.impossible(at, 'the tier has no rate', 'Take its price from the rate sheet.')
    const isLast = t === tiers.length - 1
    const isOpen = tier.max === undefined || tier.max > NO_END || (tier.max === 0 && tiers.length === 1)
    const upTo = isOpen ? undefined : tier.max
    if (!isLast && upTo === undefined)
      carried.impossible(at, 'a tier that is not the last has no upper end', 'Take the tiers from the rate sheet.')
    if (isLast && upTo !== undefined)
      carried.impossible(
        at,
        `the last tier ends at ${upTo} ${unit}, so what is above it has no price`,
        'Take the price above it from the rate sheet.',
      )
    if (upTo !== undefined && upTo <= below)
      carried.impossible(
        at,
        `the tier ends at ${upTo} ${unit}, not above the one before it (${below} ${unit})`,
        'Upper ends are counted from zero: take them from the rate sheet.',
      )
    below = upTo ?? below
    return { upTo, usd: tierPrice(tier), sell: tier.sell }
  })
}
