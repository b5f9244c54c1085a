import { savingsCurve, type HouseEnergy } from '../bill/index.js'
import type { BillingCalendar } from '../calendar/index.js'
import { scaleExportPrices, type RateSheet } from '../tariff/index.js'
import type { CurveVariant } from '../uncertainty/index.js'
import { shiftUse } from './shift-use.js'

/** Share of each day's use that is moved into, or out of, the hours of production. */
const MOVED = 0.1

/** Inputs of the sensitivity table that change the bills: export prices, and when the house uses its energy. */
export function curveVariants(
  sheet: RateSheet,
  withSystem: RateSheet,
  energy: HouseEnergy,
  calendar: BillingCalendar,
): CurveVariant[] {
  const variants: CurveVariant[] = []
  const half = scaleExportPrices(withSystem, 0.5)
  const oneAndHalf = scaleExportPrices(withSystem, 1.5)
  if (half !== undefined && oneAndHalf !== undefined) {
    variants.push({
      id: 'export_price',
      says: 'price paid for exports',
      unit: '% of the tariff',
      central: 100,
      low: 50,
      high: 150,
      curves: [savingsCurve(sheet, energy, calendar, [], half), savingsCurve(sheet, energy, calendar, [], oneAndHalf)],
    })
  }
  if (energy.kind === 'hourly' && energy.productionKwh !== undefined) {
    const { usageKwh, productionKwh } = energy
    const curveOf = (share: number): CurveVariant['curves'][0] =>
      savingsCurve(
        sheet,
        { kind: 'hourly', usageKwh: shiftUse(usageKwh, productionKwh, share), productionKwh },
        calendar,
        [],
        withSystem,
      )
    variants.push({
      id: 'own_use',
      says: "share of each day's use moved into the hours of production (below zero: out of them)",
      unit: '% of use',
      central: 0,
      low: -100 * MOVED,
      high: 100 * MOVED,
      curves: [curveOf(-MOVED), curveOf(MOVED)],
    })
  }
  return variants
}
