import type { FixedCharge, MinimumCharge, Rider, Tax } from '../../project/index.js'
import type { PriceReader } from './price-reader.js'
import type { FixedCharges, MinimumCharges, Riders, Taxes } from './rate-sheet.js'
import { indexOfId, tariffError, theOne } from './tariff-error.js'
import { decimal } from '../../values/decimal/index.js'

export function readFixed(
  place: string,
  charges: Readonly<Record<string, FixedCharge>>,
  price: PriceReader,
): FixedCharges[] {
  return Object.entries(charges).map(([id, charge]) => {
    const at = `${place}.${id}`
    const { usd_per_month: month, usd_per_day: day } = charge
    const unit = theOne(at, { usd_per_month: month, usd_per_day: day })
    const byDays = charge.prorate_by_days === true
    if (byDays && unit === 'usd_per_day') {
      throw tariffError(at, 'a charge per day is already by days', 'Remove prorate_by_days.')
    }
    return {
      id,
      usd: price(`${at}.${unit}`, month ?? day ?? 0),
      per: unit === 'usd_per_day' ? 'day' : byDays ? 'month by days' : 'month',
    }
  })
}

export function readMinimum(minimum: MinimumCharge | undefined, price: PriceReader): MinimumCharges | undefined {
  if (minimum === undefined) return undefined
  const { usd_per_month: month, usd_per_day: day, of } = minimum
  const unit = theOne('minimum', { usd_per_month: month, usd_per_day: day })
  return { usd: price(`minimum.${unit}`, month ?? day ?? 0), per: unit === 'usd_per_day' ? 'day' : 'month', of }
}

/** Twelve prices from one or twelve. @throws StageError when there are not twelve. */
export function readMonths(place: string, prices: number | readonly number[], price: PriceReader): Riders['usdPerKwh'] {
  const months = typeof prices === 'number' ? Array.from<number>({ length: 12 }).fill(prices) : prices
  if (months.length !== 12) {
    throw tariffError(place, `there are ${String(months.length)} monthly prices`, 'State twelve, January first.')
  }
  return months.map((usd) => price(place, usd))
}

export function readRiders(riders: Readonly<Record<string, Rider>>, price: PriceReader): Riders[] {
  return Object.entries(riders).map(([id, rider]) => ({
    id,
    usdPerKwh: readMonths(`riders.${id}.usd_per_kwh`, rider.usd_per_kwh, price),
    nonBypassable: rider.non_bypassable === true,
  }))
}

/** Groups of charges that a tax may name. */
export const TAXED_GROUPS = ['fixed', 'minimum', 'energy', 'riders', 'demand'] as const

export function readTaxes(
  taxes: Readonly<Record<string, Tax>>,
  charges: readonly string[],
  price: PriceReader,
): Taxes[] {
  return Object.entries(taxes).map(([id, tax]) => {
    const place = `taxes.${id}`
    const { percent, usd_per_kwh: perKwh } = tax
    theOne(place, { percent, usd_per_kwh: perKwh })
    for (const of of tax.of ?? []) indexOfId(`${place}.of`, 'charge', of, [...TAXED_GROUPS, ...charges])
    return {
      id,
      percent: percent === undefined ? undefined : decimal(percent),
      usdPerKwh: perKwh === undefined ? undefined : price(`${place}.usd_per_kwh`, perKwh),
      of: tax.of,
      beforeCredits: tax.before_credits !== false,
    }
  })
}
