import type { Incentive, Incentives } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import { decimal, toCents, type Decimal } from '../../values/decimal/index.js'
import type { Watts } from '../../values/index.js'

/** An incentive that is paid at purchase. */
export interface PurchaseIncentive {
  readonly id: string
  readonly name: string
  readonly usd: Decimal
}

/**
 * Incentives that arrive at purchase: amounts, amounts per watt, and shares of the cost, with their caps. Tax credits,
 * payments per kWh and what arrives later are the business of the payback.
 *
 * @param gross Cost before incentives, USD.
 * @param ratingW DC rating, W.
 * @throws StageError when an amount is missing.
 */
export function purchaseIncentives(
  incentives: Incentives | undefined,
  gross: Decimal,
  ratingW: Watts,
): PurchaseIncentive[] {
  return Object.entries(incentives ?? {})
    .filter(([, each]) => isAtPurchase(each))
    .map(([id, each]) => {
      const amount = amountOf(id, each, gross, ratingW)
      const capped = each.cap_usd !== undefined && amount.gt(each.cap_usd) ? decimal(each.cap_usd) : amount
      return { id, name: each.name, usd: toCents(capped) }
    })
}

/** Ids of the incentives that come later or depend on taxes or output. */
export function laterIncentives(incentives: Incentives | undefined): string[] {
  return Object.entries(incentives ?? {}).flatMap(([id, each]) => (isAtPurchase(each) ? [] : [id]))
}

function isAtPurchase({ kind, year_received: year }: Incentive): boolean {
  return kind !== 'tax_credit' && kind !== 'per_kwh' && (year ?? 0) === 0
}

function amountOf(id: string, incentive: Incentive, gross: Decimal, ratingW: Watts): Decimal {
  switch (incentive.kind) {
    case 'upfront':
      return needed(id, 'amount_usd', incentive)
    case 'per_watt':
      return needed(id, 'usd_per_w', incentive).times(ratingW)
    case 'share_of_cost':
      return needed(id, 'percent', incentive).div(100).times(gross)
    case 'per_kwh':
    case 'tax_credit':
      throw new Error(`incentive ${id} is not paid at purchase`)
  }
}

function needed(id: string, key: 'amount_usd' | 'usd_per_w' | 'percent', incentive: Incentive): Decimal {
  const value = incentive[key]
  if (value !== undefined) return decimal(value)
  throw new StageError(
    `incentives.${id}.${key}`,
    `an incentive of kind ${incentive.kind} needs ${key}`,
    'Read it from the page of the programme.',
  )
}
