import { kwhDecimal } from '../exact/index.js'
import type { EnergyPrices, RateSheet } from '../tariff/index.js'
import type { BillLines } from './bill-lines.js'
import type { BillLedger } from './ledger.js'
import { thresholdKwh } from './threshold.js'
import { addPeriodTiers } from './period-tier-lines.js'
import { ZERO, decimal, smaller, type Decimal } from '../../values/decimal/index.js'

/**
 * Energy, tier adders and riders on the billed energy.
 *
 * @param billed By segment and period, whole millionths of a kWh; below zero where a surplus is valued at retail.
 * @param gridImport By segment, millionths of a kWh: what non-bypassable riders are due on.
 */
export function addEnergyLines(
  lines: BillLines,
  sheet: RateSheet,
  ledger: BillLedger,
  billed: readonly Float64Array[],
  gridImport: readonly number[],
): void {
  const bySegment = billed.map((periods) => periods.reduce((a, b) => a + b, 0))
  for (const [s, segment] of ledger.segments.entries()) {
    const prices = sheet.energy[segment.season]
    const season = sheet.seasons[segment.season] ?? ''
    if (prices === undefined) continue
    const byPeriod = billed[s] ?? new Float64Array()
    if (prices.kind === 'periods') addPeriods(lines, sheet, season, prices, byPeriod)
    else if (prices.kind === 'period tiers') {
      addPeriodTiers(lines, sheet.periods, prices, {
        season,
        billed: byPeriod,
        days: segment.days,
        billDays: ledger.days,
      })
    } else {
      const kwh = kwhDecimal(bySegment[s] ?? 0)
      addTiers(lines, prices, { season, kwh, days: segment.days, billDays: ledger.days })
    }
  }
  for (const adder of sheet.tierAdders) {
    const counted = ledger.segments.map((segment, s) => ({ segment, kwh: bySegment[s] ?? 0 }))
    const own = counted.filter(({ segment }) => adder.seasons.includes(segment.season))
    const days = own.reduce((all, { segment }) => all + segment.days, 0)
    const kwh = kwhDecimal(own.reduce((all, { kwh }) => all + kwh, 0))
    const above = kwh.minus(thresholdKwh(adder.above, days, ledger.days))
    if (days === 0 || above.lte(0)) continue
    const says = `${adder.id}: above ${adder.above.kwh.toFixed()} kWh per ${adder.above.per}`
    lines.add({
      id: `tier_adder.${adder.id}`,
      group: 'energy',
      says,
      quantity: above,
      unit: 'kWh',
      price: adder.usdPerKwh,
    })
  }
  for (const rider of sheet.riders) {
    const micro = (rider.nonBypassable ? gridImport : bySegment).reduce((a, b) => a + b, 0)
    lines.add({
      id: `rider.${rider.id}`,
      group: 'riders',
      says: rider.nonBypassable ? `${rider.id} (non-bypassable)` : rider.id,
      quantity: kwhDecimal(micro),
      unit: 'kWh',
      price: rider.usdPerKwh[ledger.month - 1] ?? ZERO,
      bypassable: !rider.nonBypassable,
    })
  }
}

function addPeriods(
  lines: BillLines,
  sheet: RateSheet,
  season: string,
  prices: Extract<EnergyPrices, { kind: 'periods' }>,
  billed: Float64Array,
): void {
  for (const [p, price] of prices.usdPerKwh.entries()) {
    const period = sheet.periods[p] ?? ''
    const quantity = kwhDecimal(billed[p] ?? 0)
    lines.add({
      id: `energy.${season}.${period}`,
      group: 'energy',
      says: `energy ${season}, ${period}`,
      quantity,
      unit: 'kWh',
      price,
    })
  }
}

/** What a season's share of a bill is billed for. */
interface SeasonUse {
  readonly season: string
  readonly kwh: Decimal
  readonly days: number
  readonly billDays: number
}

function addTiers(lines: BillLines, prices: Extract<EnergyPrices, { kind: 'tiers' }>, use: SeasonUse): void {
  const { season, kwh, days, billDays } = use
  let below = decimal(0)
  for (const [t, tier] of prices.tiers.entries()) {
    const upTo = tier.upTo === undefined ? kwh : smaller(kwh, thresholdKwh(tier.upTo, days, billDays))
    const quantity = upTo.minus(below)
    if (t > 0 && quantity.lte(0)) return
    const only = prices.tiers.length === 1
    lines.add({
      id: only ? `energy.${season}` : `energy.${season}.tier_${String(t + 1)}`,
      group: 'energy',
      says: only ? `energy ${season}` : `energy ${season}, tier ${String(t + 1)}`,
      quantity,
      unit: 'kWh',
      price: tier.usdPerKwh,
    })
    below = upTo
  }
}
