import { kwhDecimal } from '../exact/index.js'
import type { SolarTerms } from '../tariff/index.js'
import type { BillLines } from './bill-lines.js'
import { ZERO, decimal, type Decimal } from '../../values/decimal/index.js'

/** A surplus valued at retail becomes credit instead of a charge below zero. */
export function moveSurplusToCredit(lines: BillLines): Decimal {
  const energy = lines.total((line) => line.bypassable)
  if (energy.gte(0)) return ZERO
  const surplus = energy.times(-1)
  const says = 'energy surplus moved to the credit'
  lines.add({ id: 'energy.to_credit', group: 'energy', says, quantity: surplus, unit: 'USD', price: decimal(1) })
  return surplus
}

/** Pays or gives up banked kWh on the bill on which they are settled. */
export function settleKwh(
  lines: BillLines,
  terms: SolarTerms,
  bankMicro: Float64Array,
  month: number,
): { readonly bankMicro: Float64Array; readonly lostMicro: number } {
  const left = bankMicro.reduce((a, b) => a + b, 0)
  if (terms.rule !== 'net metering' || left === 0) return { bankMicro, lostMicro: 0 }
  if (terms.settle === 'annual' && month !== terms.trueUpMonth) return { bankMicro, lostMicro: 0 }
  const paid = !terms.surplusUsdPerKwh.eq(0)
  if (paid) {
    const price = terms.surplusUsdPerKwh.times(-1)
    const quantity = kwhDecimal(left)
    lines.add({ id: 'surplus.kwh', group: 'surplus', says: 'left-over kWh paid', quantity, unit: 'kWh', price })
    if (terms.settle === 'annual') {
      const one = decimal(1)
      lines.add({
        id: 'surplus.fee',
        group: 'surplus',
        says: 'true-up fee',
        quantity: one,
        unit: 'times',
        price: terms.trueUpFeeUsd,
      })
    }
  }
  return { bankMicro: new Float64Array(bankMicro.length), lostMicro: paid ? 0 : left }
}
