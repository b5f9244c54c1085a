import { gridAround, savingsCurve, type HouseEnergy, type HouseLedgers, type SavingsCurve } from '../bill/index.js'
import type { BillingCalendar } from '../calendar/index.js'
import { scaleExportPrices, type RateSheet } from '../tariff/index.js'
import type { CurveVariant } from '../uncertainty/index.js'
import { shiftUse } from './shift-use.js'

/** Share of each day's use that is moved into, or out of, the hours of production. */
const MOVED = 0.1

/**
 * Inputs of the sensitivity table that change the bills: export prices, and when the house uses its energy.
 *
 * @param scales Factors on the output at which the curves are read.
 * @param ledgers The house as it is.
 */
export function curveVariants(
  sheet: RateSheet,
  withSystem: RateSheet,
  energy: HouseEnergy,
  calendar: BillingCalendar,
  scales: readonly number[],
  ledgers: HouseLedgers,
): CurveVariant[] {
  const grid = gridAround(Math.min(...scales), Math.max(...scales))
  const variants: CurveVariant[] = []
  const curveOf = (used: HouseEnergy): SavingsCurve => savingsCurve(sheet, used, calendar, [], withSystem, grid)
  const half = scaleExportPrices(withSystem, 0.5)
  const oneAndHalf = scaleExportPrices(withSystem, 1.5)
  if (half !== undefined && oneAndHalf !== undefined) {
    // Prices change no hours.
    const at = (prices: RateSheet) => savingsCurve(sheet, energy, calendar, [], prices, grid, ledgers)
    variants.push({
      id: 'export_price',
      says: 'price paid for exports',
      unit: '% of the tariff',
      central: 100,
      low: 50,
      high: 150,
      curves: [at(half), at(oneAndHalf)],
    })
  }
  if (energy.kind === 'hourly' && energy.productionKwh !== undefined) {
    const { usageKwh, productionKwh } = energy
    const shifted = (share: number): HouseEnergy => ({
      kind: 'hourly',
      usageKwh: shiftUse(usageKwh, productionKwh, share),
      productionKwh,
    })
    variants.push({
      id: 'own_use',
      says: "share of each day's use moved into the hours of production (below zero: out of them)",
      unit: '% of use',
      central: 0,
      low: -100 * MOVED,
      high: 100 * MOVED,
      curves: [curveOf(shifted(-MOVED)), curveOf(shifted(MOVED))],
    })
  }
  return variants
}
