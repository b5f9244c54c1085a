import type { StepPrices } from '../../storage/index.js'
import { layHours } from '../bill/index.js'
import { HOURS_PER_YEAR, type BillingCalendar } from '../calendar/index.js'
import type { EnergyPrices, RateSheet } from '../tariff/index.js'

const hasTiers = (prices: EnergyPrices): boolean =>
  prices.kind === 'tiers' ? prices.tiers.length > 1 : prices.kind === 'period tiers'

/** Why a tariff has no price for each hour by itself. */
function whyNone(sheet: RateSheet, parts: 1 | 4): string | undefined {
  if (sheet.energy.some(hasTiers)) return 'energy has tiers'
  if (sheet.partsPerHour > parts) return 'a price period begins within an hour, and use is known by hours'
  if (sheet.tierAdders.length > 0) return 'a price rises above an amount of energy'
  if (sheet.demand.length > 0) return 'demand is charged'
  const { solar } = sheet
  if (solar.rule === 'net metering') return 'exports are netted against imports over a bill'
  if (solar.rule === 'net billing' && solar.netting === 'bill') return 'imports and exports are netted over a bill'
  return solar.rule === 'buy all, sell all' ? 'all output is sold' : undefined
}

const priceIn = (prices: EnergyPrices | undefined, period: number): number => {
  if (prices?.kind === 'tiers') return prices.tiers[0]?.usdPerKwh.toNumber() ?? 0
  return prices?.kind === 'periods' ? (prices.usdPerKwh[period]?.toNumber() ?? 0) : 0
}

/**
 * What a kWh costs and brings in every hour of a year, or every part of one, USD; in words why it has no such price.
 *
 * @param parts Steps of an hour.
 * @limits Riders count with the month of their bill; taxes, minimum charges and the settling of credit are left out.
 */
export function hourPrices(sheet: RateSheet, calendar: BillingCalendar, parts: 1 | 4 = 1): StepPrices | string {
  const why = whyNone(sheet, parts)
  if (why !== undefined) return why
  const layout = layHours(sheet, calendar, parts)
  const buyUsd = new Float64Array(HOURS_PER_YEAR * parts)
  const sellUsd = new Float64Array(HOURS_PER_YEAR * parts)
  const { solar } = sheet
  for (let h = 0; h < buyUsd.length; h++) {
    const segment = layout.segments[layout.segment[h] ?? 0]
    const month = (segment?.bill ?? 1) - 1
    const period = (layout.slot[h] ?? 0) % layout.periods
    let buy = priceIn(sheet.energy[segment?.season ?? 0], period)
    for (const rider of sheet.riders) buy += rider.usdPerKwh[month]?.toNumber() ?? 0
    buyUsd[h] = buy
    if (solar.rule !== 'net billing') continue
    const { prices } = solar
    const place = prices.kind === 'monthly' ? month : prices.kind === 'periods' ? period : (layout.cell[h] ?? 0)
    sellUsd[h] = prices.usdPerKwh[place]?.toNumber() ?? 0
  }
  return { buyUsd, sellUsd }
}
