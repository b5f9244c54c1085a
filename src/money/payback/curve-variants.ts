import { gridAround, savingsCurve, type HouseEnergy, type HouseLedgers, type SavingsCurve } from '../bill/index.js'
import type { BillingCalendar } from '../calendar/index.js'
import { scaleExportPrices, type RateSheet } from '../tariff/index.js'
import type { Curves, CurveVariant } from '../uncertainty/index.js'
import { yearCurves, type YearChange, type YearsInput } from '../years/index.js'
import { shiftUse } from './shift-use.js'

/** Share of each day's use that is moved into, or out of, the hours of production. */
const MOVED = 0.1

const EXPORT_PRICE = {
  id: 'export_price',
  says: 'price paid for exports',
  unit: '% of the tariff',
  central: 100,
  low: 50,
  high: 150,
} as const

const OWN_USE = {
  id: 'own_use',
  says: "share of each day's use moved into the hours of production (below zero: out of them)",
  unit: '% of use',
  central: 0,
  low: -100 * MOVED,
  high: 100 * MOVED,
} as const

/** The same where each year has a curve of its own. */
function variantsOfYears(curve: SavingsCurve, years: YearsInput): CurveVariant[] {
  const { productionKwh } = years
  const at = (change: YearChange): Curves => ({ curve, curves: yearCurves(years, change) })
  const exportAt = (factor: number): Curves =>
    at({ sheetWithSystem: (sheet) => scaleExportPrices(sheet, factor) ?? sheet })
  const shifted = (share: number): Curves => at({ usageKwh: (kwh) => shiftUse(kwh, productionKwh, share) })
  const sheets = [years.sheetWithSystem, ...years.sheetWithSystem.later.map(({ sheet }) => sheet)]
  const pays = sheets.some((sheet) => scaleExportPrices(sheet, 1) !== undefined)
  return [
    ...(pays ? [{ ...EXPORT_PRICE, curves: [exportAt(0.5), exportAt(1.5)] as const }] : []),
    { ...OWN_USE, curves: [shifted(-MOVED), shifted(MOVED)] },
  ]
}

/** The house as it is, and where its curves are read. */
export interface CurveVariantsInput {
  readonly sheet: RateSheet
  readonly sheetWithSystem: RateSheet
  readonly energy: HouseEnergy
  readonly calendar: BillingCalendar
  /** Factors on the output at which the curves are read. */
  readonly scales: readonly number[]
  readonly ledgers: HouseLedgers
  /** The curve of the house as it is, and its years where they differ. */
  readonly curve: SavingsCurve
  readonly years: YearsInput | undefined
}

/** Inputs of the sensitivity table that change the bills: export prices, and when the house uses its energy. */
export function curveVariants(input: CurveVariantsInput): CurveVariant[] {
  const { sheet, sheetWithSystem, energy, calendar, scales, ledgers } = input
  if (input.years !== undefined) return variantsOfYears(input.curve, input.years)
  const grid = gridAround(Math.min(...scales), Math.max(...scales))
  const variants: CurveVariant[] = []
  const half = scaleExportPrices(sheetWithSystem, 0.5)
  const oneAndHalf = scaleExportPrices(sheetWithSystem, 1.5)
  if (half !== undefined && oneAndHalf !== undefined) {
    // Prices change no hours.
    const at = (prices: RateSheet): Curves => ({
      curve: savingsCurve({ sheet, sheetWithSystem: prices, energy, calendar, grid, ledgers }),
    })
    variants.push({ ...EXPORT_PRICE, curves: [at(half), at(oneAndHalf)] })
  }
  if (energy.kind === 'hourly' && energy.productionKwh !== undefined) {
    const { usageKwh, productionKwh, storage } = energy
    const shifted = (share: number): Curves => {
      const moved = {
        kind: 'hourly',
        usageKwh: shiftUse(usageKwh, productionKwh, share),
        productionKwh,
        ...(storage === undefined ? {} : { storage }),
      } as const
      return { curve: savingsCurve({ sheet, sheetWithSystem, energy: moved, calendar, grid }) }
    }
    variants.push({ ...OWN_USE, curves: [shifted(-MOVED), shifted(MOVED)] })
  }
  return variants
}
