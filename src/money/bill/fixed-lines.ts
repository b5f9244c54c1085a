import { kwhDecimal } from '../exact/index.js'
import type { DemandCharges, FixedCharges, RateSheet } from '../tariff/index.js'
import type { BillLines } from './bill-lines.js'
import type { BillLedger } from './ledger.js'
import { ZERO, decimal, smaller, type Decimal } from '../../values/decimal/index.js'

const ONE = decimal(1)
const DAYS_PER_MONTH = decimal(365).div(12)

const months = new Map<number, Decimal>()

/** Days in months of the same length; bills have few lengths, and a quotient takes long. */
function monthsOf(days: number): Decimal {
  const known = months.get(days) ?? decimal(days).div(DAYS_PER_MONTH)
  months.set(days, known)
  return known
}

/** Charges that no kWh changes. */
export function addFixedLines(lines: BillLines, charges: readonly FixedCharges[], days: number): void {
  for (const { id, usd, per } of charges) {
    const quantity = per === 'day' ? decimal(days) : per === 'month' ? ONE : monthsOf(days)
    lines.add({
      id: `fixed.${id}`,
      group: 'fixed',
      says: id,
      quantity,
      unit: per === 'day' ? 'days' : 'months',
      price: usd,
    })
  }
}

/** Demand charges on the highest mean power from the grid (of the house when all generation is sold). */
export function addDemandLines(lines: BillLines, sheet: RateSheet, ledger: BillLedger, ofLoad: boolean): void {
  for (const charge of sheet.demand) {
    if (charge.months !== undefined && !charge.months.includes(ledger.month)) continue
    addDemandTiers(lines, charge, ledger.demandOf?.get(charge.id) ?? peakOf(charge, ledger, ofLoad), ledger)
  }
}

/** Highest mean power in the periods and seasons of a charge, millionths of a kW. */
function peakOf(charge: DemandCharges, ledger: BillLedger, ofLoad: boolean): number {
  let peak = 0
  for (const segment of ledger.segments) {
    if (!charge.seasons.includes(segment.season)) continue
    const peaks = ofLoad ? segment.peakLoad : segment.peakImport
    for (const p of charge.periods) peak = Math.max(peak, peaks[p] ?? 0)
  }
  return peak
}

function addDemandTiers(lines: BillLines, charge: DemandCharges, peak: number, { demandMin = 60 }: BillLedger): void {
  const over = demandMin === 60 ? 'highest hour' : `highest ${String(demandMin)} minutes`
  const kw = kwhDecimal(peak)
  const { id, tiers } = charge
  let below = ZERO
  for (const [t, { upToKw, usdPerKw }] of tiers.entries()) {
    const upTo = upToKw === undefined ? kw : smaller(kw, upToKw)
    const quantity = upTo.minus(below)
    if (t > 0 && quantity.lte(0)) return
    lines.add({
      id: tiers.length === 1 ? `demand.${id}` : `demand.${id}.tier_${String(t + 1)}`,
      group: 'demand',
      says: tiers.length === 1 ? `${id}: ${over}` : `${id}: ${over}, tier ${String(t + 1)}`,
      quantity,
      unit: 'kW',
      price: usdPerKw,
    })
    below = upTo
  }
}

/**
 * Tops the bill up to the minimum.
 *
 * @returns The minimum, USD, which no credit may go below; 0 without one.
 */
export function addMinimumLine(lines: BillLines, sheet: RateSheet, days: number): Decimal {
  const { minimum } = sheet
  if (minimum === undefined) return ZERO
  const least = minimum.per === 'day' ? minimum.usd.times(days) : minimum.usd
  const compared = lines.total((line) => minimum.of === 'bill' || line.group === 'energy' || line.group === 'riders')
  const missing = least.minus(compared)
  if (missing.gt(0)) {
    const says = `up to the minimum of ${least.toFixed()} USD for ${minimum.of === 'energy' ? 'energy' : 'the bill'}`
    lines.add({ id: 'minimum', group: 'minimum', says, quantity: missing, unit: 'USD', price: ONE })
  }
  return least
}
