import {
  houseLedgers,
  priceYear,
  toNumber,
  type HouseEnergy,
  type HouseStorage,
  curveThrough,
  type SavingsCurve,
} from '../bill/index.js'
import type { BillingCalendar } from '../calendar/index.js'
import type { FinanceTerms } from '../cash-flow/index.js'
import { atPricesOf, withContractOf, type PriceFactors, type RateSheet } from '../tariff/index.js'
import { billWeights } from './bill-weights.js'

/** A house whose use, rate sheets or prices change from year to year. */
export interface YearsInput {
  /** Sheets of today with their later ones. */
  readonly sheet: RateSheet
  readonly sheetWithSystem: RateSheet
  readonly productionKwh: Float64Array
  /** 8760 hours of a year of the cash flow, kWh; 1 = the first. */
  readonly usageOf: (year: number) => Float64Array
  /** A battery, as new; none when missing. */
  readonly storage?: HouseStorage
  readonly calendar: BillingCalendar
  readonly terms: FinanceTerms
  /** Year of purchase; there when sheets have dates. */
  readonly baseYear: number | undefined
  /** Factors on the output at which the curve of a year is exact. */
  readonly scalesOf: (year: number) => readonly number[]
}

/** What a question changes of the years. */
export interface YearChange {
  /** Of the sheet of the solar customer, in the prices of its year. */
  readonly sheetWithSystem?: (sheet: RateSheet) => RateSheet
  readonly usageKwh?: (usageKwh: Float64Array) => Float64Array
  /** Another battery in place of that of the house. */
  readonly storage?: HouseStorage
}

/** A sheet of today or later, and the year of the cash flow in whose money its prices are (0 = purchase). */
interface Dated {
  readonly from: string
  readonly pricedIn: number
  readonly without: RateSheet
  readonly withSystem: RateSheet
}

/**
 * Savings of each year as a function of output, USD of the purchase year. The bills are those of the year: its use, the sheets in
 * force, and prices in money of that year, so that a promised export price is not inflated.
 *
 * @returns Year 1 first.
 * @throws StageError as `computeBill`.
 * @limits Days and weather are those of a typical year. A bill across a change of sheets is shared out by days; credits that are
 * carried from bill to bill are then those of each sheet as if it held all year.
 */
export function yearCurves(input: YearsInput, change: YearChange = {}): SavingsCurve[] {
  const sheets = datedSheets(input)
  return Array.from({ length: input.terms.years }, (_, i) => curveIn(input, sheets, i + 1, change))
}

/** The savings of one year alone, as `yearCurves` gives them. @throws StageError as `computeBill`. */
export function yearCurve(input: YearsInput, year: number, change: YearChange = {}): SavingsCurve {
  return curveIn(input, datedSheets(input), year, change)
}

function datedSheets({ sheet, sheetWithSystem, baseYear = 0 }: YearsInput): Dated[] {
  const later = sheet.later.map(({ from, sheet: without }, i): Dated => ({
    from,
    pricedIn: Math.max(0, Number(from.slice(0, 4)) - baseYear),
    without,
    withSystem: sheetWithSystem.later[i]?.sheet ?? without,
  }))
  return [{ from: '', pricedIn: 0, without: sheet, withSystem: sheetWithSystem }, ...later]
}

/** Factors from the prices of a sheet to those of a year, in money of that year. */
export function factorsOf(terms: FinanceTerms, pricedIn: number, year: number): PriceFactors {
  const inflated = (1 + terms.inflation) ** (year - pricedIn)
  const rise = (index: readonly number[]): number =>
    ((year === 0 ? 1 : (index[year - 1] ?? 1)) / (pricedIn === 0 ? 1 : (index[pricedIn - 1] ?? 1))) * inflated
  const parts = terms.priceParts ?? { energy: terms.priceIndex, fixed: terms.priceIndex, export: terms.priceIndex }
  return { energy: rise(parts.energy), fixed: rise(parts.fixed), export: rise(parts.export) }
}

function curveIn(input: YearsInput, sheets: readonly Dated[], year: number, change: YearChange): SavingsCurve {
  const { calendar, terms, baseYear, productionKwh, sheetWithSystem } = input
  const inForce = sheetsOfYear(sheets, baseYear === undefined ? undefined : baseYear + year, input.sheet.readDay)
  const usage = input.usageOf(year)
  const storage = change.storage ?? input.storage
  const energy: HouseEnergy = {
    kind: 'hourly',
    usageKwh: change.usageKwh?.(usage) ?? usage,
    productionKwh,
    ...(storage === undefined ? {} : { storage }),
  }
  const weights =
    inForce.length === 1 || baseYear === undefined
      ? undefined
      : billWeights(
          inForce.slice(1).map(({ from }) => from),
          baseYear + year,
          inForce[0]?.without.readDay,
        )
  const parts = inForce.map((dated, part) => {
    const factors = factorsOf(terms, dated.pricedIn, year)
    const without = atPricesOf(dated.without, factors)
    const promised = withContractOf(atPricesOf(ofTariff(dated.withSystem), factors), sheetWithSystem, year)
    const withSystem = change.sheetWithSystem?.(promised) ?? promised
    // Prices change no hours: one ledger serves both where both customers have one tariff.
    const oneTariff = dated.without === dated.withSystem
    const ledgers = houseLedgers(oneTariff ? withSystem : without, energy, calendar, withSystem)
    const shareOf = (month: number): number => weights?.[month - 1]?.[part] ?? 1
    const total = (sheet: RateSheet, of: Parameters<typeof priceYear>[1], solar: boolean): number => {
      const priced = priceYear(sheet, of, solar)
      if (weights === undefined) return toNumber(priced.total)
      return priced.bills.reduce((sum, bill) => sum + shareOf(bill.ledger.month) * toNumber(bill.total), 0)
    }
    const before = total(without, ledgers.before.without(), false)
    return (scale: number): number => before - total(withSystem, ledgers.after.withSystem(scale), true)
  })
  const deflate = (1 + terms.inflation) ** -year
  const scales = Float64Array.from([...new Set(input.scalesOf(year))].sort((a, b) => a - b))
  return curveThrough(scales, (scale) => parts.reduce((sum, part) => sum + part(scale), 0) * deflate)
}

/** The sheet without the price of its contract. */
function ofTariff(sheet: RateSheet): RateSheet {
  return sheet.exportContract === undefined ? sheet : { ...sheet, solar: sheet.exportContract.ofTariff }
}

/**
 * The sheets in force in the bills of a calendar year.
 *
 * @param readDay Day of the meter reading; the first bill then begins in December before.
 */
export function sheetsOfYear<Sheet extends { readonly from: string }>(
  sheets: readonly Sheet[],
  calendarYear: number | undefined,
  readDay: number | undefined,
): readonly Sheet[] {
  if (calendarYear === undefined || sheets.length === 1) return sheets.slice(0, 1)
  const firstDay =
    readDay === undefined
      ? `${String(calendarYear)}-01-01`
      : `${String(calendarYear - 1)}-12-${String(readDay + 1).padStart(2, '0')}`
  const lastDay = `${String(calendarYear)}-12-${String(readDay ?? 31).padStart(2, '0')}`
  const first = sheets.findLastIndex(({ from }) => from <= firstDay)
  return sheets.filter(({ from }, i) => i >= Math.max(0, first) && from <= lastDay)
}
