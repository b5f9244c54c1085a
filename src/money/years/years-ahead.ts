import { StageError, type Worksheet } from '../../worksheet/index.js'
import type { BillingCalendar } from '../calendar/index.js'
import type { FinanceTerms } from '../cash-flow/index.js'
import { contractPrice, type RateSheet } from '../tariff/index.js'
import type { UseOfYear } from '../usage/index.js'
import { factorsOf, sheetsOfYear, type YearsInput } from './year-curves.js'
import type { HouseEnergy } from '../bill/index.js'
import { toNumber } from '../bill/index.js'

/** What a project says of the years to come. */
export interface AheadInput {
  readonly sheet: RateSheet
  readonly sheetWithSystem: RateSheet
  readonly energy: HouseEnergy
  readonly usageOf: UseOfYear | undefined
  readonly calendar: BillingCalendar
  readonly terms: FinanceTerms
  readonly baseYear: number | undefined
  readonly scalesOf: (year: number) => readonly number[]
}

/** A year whose use, sheet or prices may differ from those of the others. */
export interface YearValues {
  readonly year: number
  /** Calendar year; null when the year of purchase is not stated. */
  readonly calendar_year: number | null
  readonly usage_kwh: number
  /** Names of the rate sheets in force for the customer with the system. */
  readonly tariffs: readonly string[]
  /** Factors on the printed prices of the last of them, in money of the year. */
  readonly energy_price_factor: number
  readonly fixed_price_factor: number
  readonly export_price_factor: number
  /** Promised price of exported energy, USD/kWh in money of the year; null when the tariff's holds. */
  readonly contract_usd_per_kwh: number | null
}

/**
 * The years to come, where use, sheets, prices or export contracts change; undefined when all years are alike.
 *
 * @throws StageError for dated sheets without a year of purchase, and for monthly totals, which have no hours to grow.
 */
export function yearsAhead(input: AheadInput): YearsInput | undefined {
  const { sheet, sheetWithSystem, energy, usageOf, terms, baseYear } = input
  const isDated = sheet.later.length > 0
  const changes =
    isDated || sheetWithSystem.exportContract !== undefined || usageOf !== undefined || terms.priceParts !== undefined
  if (!changes) return undefined
  if (isDated && baseYear === undefined) {
    throw new StageError(
      'finance.base_year',
      `a later rate sheet holds from ${sheet.later[0]?.from ?? ''} on, and the year of purchase is not stated`,
      'State finance.base_year; year 1 of the cash flow is the year after it.',
    )
  }
  if (energy.kind !== 'hourly' || energy.productionKwh === undefined) {
    throw new StageError(
      'usage',
      'years that differ are worked out by the hour, and there are monthly totals only',
      'Give hours of use and output.',
    )
  }
  const { usageKwh, productionKwh, storage } = energy
  return {
    sheet,
    sheetWithSystem,
    productionKwh,
    ...(storage === undefined ? {} : { storage }),
    usageOf: usageOf ?? (() => usageKwh),
    calendar: input.calendar,
    terms,
    baseYear,
    scalesOf: input.scalesOf,
  }
}

/** What differs from year to year, recorded and told. */
export function tellYears(years: YearsInput, worksheet: Worksheet): YearValues[] {
  const { terms, sheetWithSystem, baseYear } = years
  const sheets = [{ from: '', sheet: sheetWithSystem }, ...sheetWithSystem.later]
  for (const { from, sheet } of sheetWithSystem.later) {
    if (sheetWithSystem.solar.rule === 'unpaid' || sheet.solar.rule !== 'unpaid') continue
    worksheet.find({
      severity: 'warning',
      id: 'payback.later-sheet-unpaid',
      message: `the rate sheet from ${from} on states no solar rule, so exported kWh are unpaid from then on`,
      where: 'tariff.later',
      fix: 'Copy the solar rule into the later sheet when it goes on.',
    })
  }
  if (sheetWithSystem.exportContract !== undefined) {
    worksheet.assume({
      path: 'tariff.solar.export_contract',
      value: 1,
      unit: 'year of the cash flow',
      why: 'the contract runs from permission to operate, with which the first year of output begins',
      source: { document: '', standing: 'common practice, no source' },
    })
  }
  return Array.from({ length: terms.years }, (_, i) => {
    const year = i + 1
    const inForce = sheetsOfYear(sheets, baseYear === undefined ? undefined : baseYear + year, years.sheet.readDay)
    const last = inForce.at(-1)
    const pricedIn =
      last === undefined || last.from === '' ? 0 : Math.max(0, Number(last.from.slice(0, 4)) - (baseYear ?? 0))
    const factors = factorsOf(terms, pricedIn, year)
    const usageKwh = years.usageOf(year).reduce((sum, kwh) => sum + kwh, 0)
    const { exportContract } = sheetWithSystem
    const promised = exportContract === undefined ? undefined : contractPrice(exportContract, year)
    worksheet.note({
      id: `payback.year-${String(year)}`,
      says: `Year ${String(year)}: its use, and its prices in money of that year, by ${inForce.map(({ sheet }) => sheet.name).join(', then ')}`,
      formula: 'price = printed price * real index of the year / real index of the sheet * (1 + i)^(t - t_sheet)',
      inputs: [
        { symbol: 'E_use', value: usageKwh, unit: 'kWh', from: 'usage' },
        { symbol: 't', value: year, unit: 'year', from: 'cash flow' },
        { symbol: 't_sheet', value: pricedIn, unit: 'year', from: last?.from === '' ? 'purchase' : 'tariff.later' },
        { symbol: 'i', value: terms.inflation, unit: '1/year', from: 'finance.inflation_pct' },
      ],
      result: { symbol: 'factor of energy prices', value: factors.energy, unit: '' },
      source: { document: 'Public rate sheets with their dates; 10 CFR 436 for real prices', standing: 'secondary' },
    })
    const round = (value: number): number => Number(value.toFixed(5))
    return {
      year,
      calendar_year: baseYear === undefined ? null : baseYear + year,
      usage_kwh: Number(usageKwh.toFixed(1)),
      tariffs: inForce.map(({ sheet }) => sheet.name),
      energy_price_factor: round(factors.energy),
      fixed_price_factor: round(factors.fixed),
      export_price_factor: round(factors.export),
      contract_usd_per_kwh: promised === undefined ? null : toNumber(promised),
    }
  })
}

/** Terms for curves that hold the prices of their years: the index on top of them is 1. */
export function withPricesInCurves(terms: FinanceTerms): FinanceTerms {
  return { ...terms, priceIndex: terms.priceIndex.map(() => 1), escalation: undefined }
}
