import type { RateSheet, SolarTerms } from './rate-sheet.js'
import { decimal, type Decimal } from '../../values/decimal/index.js'

/**
 * The same tariff with every price that it pays for solar energy multiplied.
 *
 * @returns Undefined when it pays none (net metering without payment of the surplus, exports unpaid).
 */
export function scaleExportPrices(sheet: RateSheet, factor: number): RateSheet | undefined {
  const times = (usd: Decimal): Decimal => usd.times(decimal(factor))
  const { solar } = sheet
  let changed: SolarTerms
  switch (solar.rule) {
    case 'unpaid':
      return undefined
    case 'net metering':
      if (solar.surplusUsdPerKwh.eq(0)) return undefined
      changed = { ...solar, surplusUsdPerKwh: times(solar.surplusUsdPerKwh) }
      break
    case 'net billing':
      changed = { ...solar, prices: { ...solar.prices, usdPerKwh: solar.prices.usdPerKwh.map(times) } }
      break
    case 'buy all, sell all':
      changed = { ...solar, usdPerKwh: times(solar.usdPerKwh) }
      break
  }
  return { ...sheet, solar: changed }
}
