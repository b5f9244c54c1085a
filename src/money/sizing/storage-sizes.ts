import { StageError, Worksheet } from '../../worksheet/index.js'
import { savingsCurve } from '../bill/index.js'
import { capLoan, cashFlow, outputShare, readFinance, type FinanceTerms } from '../cash-flow/index.js'
import { batteryYears, withBattery, withReplacements, worthOf, yearScales } from '../payback/index.js'
import type { HouseBattery } from '../storage/index.js'
import { withPricesInCurves, yearCurves, yearsAhead } from '../years/index.js'
import type { ChooseSizeInput, SizeCandidate } from './size-types.js'

/** One number of modules with one number of storage units, and what it is worth. */
export interface StorageSizeRow {
  readonly modules: number
  readonly units: number
  readonly net_cost_usd: number
  readonly first_year_savings_usd: number
  /** Simple payback for good, years; null = not within the study. */
  readonly payback_years: number | null
  readonly npv_usd: number
}

/** Numbers of modules times numbers of units. */
export interface StorageSizesValues {
  readonly rows: readonly StorageSizeRow[]
  /** Best net present value of all; null when none is above zero. */
  readonly best: { readonly modules: number; readonly units: number } | null
}

/** Storage by its number of units, as it is asked for. */
export interface StorageChoice {
  readonly units: number
  readonly battery: HouseBattery | undefined
  /** Price of the units in place, USD. */
  readonly usd: number
}

/** Each size with storage runs all years of the study; more sizes are thinned out. */
const MOST_SIZES = 12

const cents = (usd: number): number => Math.round(usd * 100) / 100 + 0

/**
 * What numbers of modules and of storage units are worth together; at most a dozen sizes, evenly spread, the largest among them.
 *
 * @throws StageError as `chooseSize`.
 */
export function storageSizes(input: ChooseSizeInput, choices: readonly StorageChoice[]): StorageSizesValues {
  const terms = readFinance(input.finance, new Worksheet(), input.degradationPct)
  const rows = thinned(input.candidates).flatMap((candidate) =>
    choices.map((choice) => rowOf(input, terms, candidate, choice)),
  )
  const paying = rows.filter(({ npv_usd: npv }) => npv > 0)
  const best = paying.reduce<StorageSizeRow | undefined>(
    (most, row) => (most === undefined || row.npv_usd > most.npv_usd ? row : most),
    undefined,
  )
  return { rows, best: best === undefined ? null : { modules: best.modules, units: best.units } }
}

function thinned(candidates: readonly SizeCandidate[]): readonly SizeCandidate[] {
  const last = candidates.length - 1
  if (last < MOST_SIZES) return candidates
  const places = Array.from({ length: MOST_SIZES }, (_, i) => Math.round((i * last) / (MOST_SIZES - 1)))
  return places.flatMap((place) => candidates[place] ?? [])
}

function rowOf(
  input: ChooseSizeInput,
  terms: FinanceTerms,
  candidate: SizeCandidate,
  { units, battery, usd }: StorageChoice,
): StorageSizeRow {
  const { sheet, calendar, usageKwh, incentives } = input
  const sheetWithSystem = input.sheetWithSystem ?? sheet
  const { productionKwh, dcRatingW } = candidate
  const energy = { usageKwh, productionKwh }
  const whole = battery === undefined ? { kind: 'hourly' as const, ...energy } : withBattery(energy, battery)
  const scales = yearScales(terms)
  const curve = savingsCurve({ sheet, sheetWithSystem, energy: whole, calendar, extraScales: [1, ...scales], grid: [] })
  const ahead = yearsAhead({
    sheet,
    sheetWithSystem,
    energy: whole,
    usageOf: input.usageOf,
    calendar,
    terms,
    baseYear: input.finance.base_year,
    scalesOf: (year) => [outputShare(terms, year)],
  })
  const inYears = ahead === undefined ? { terms } : { terms: withPricesInCurves(terms), curves: yearCurves(ahead) }
  const curveIn = (year: number) => inYears.curves?.[year - 1] ?? curve
  const years =
    battery === undefined
      ? undefined
      : batteryYears({ battery, energy, sheet, sheetWithSystem, calendar, years: ahead }, curveIn, scales)
  const grossCostUsd = candidate.grossCostUsd + usd
  const capped = capLoan(input.finance, grossCostUsd)
  const finance = battery === undefined || years === undefined ? capped : withReplacements(capped, battery, years.life)
  const flow = cashFlow({
    curve,
    firstYearKwh: productionKwh.reduce((a, b) => a + b, 0),
    grossCostUsd,
    dcRatingW,
    finance,
    incentives,
    ...inYears,
    ...(years === undefined ? {} : { fadeUsd: years.fadeUsd }),
  })
  const { simple, npvUsd } = worthOf(flow, inYears.terms)
  return {
    modules: candidate.modules,
    units,
    net_cost_usd: cents(grossCostUsd - flow.incentives.lumps.reduce((a, b) => a + b, 0)),
    first_year_savings_usd: cents(curve.usdAt(curve.scales.indexOf(1))),
    payback_years:
      simple.lasting === undefined || !Number.isFinite(simple.lasting) ? null : Number(simple.lasting.toFixed(2)),
    npv_usd: cents(npvUsd),
  }
}

/** @throws StageError when what units of storage cost is not known. */
export function storageUsd(units: number, each: number | undefined, fixed = 0): number {
  if (units === 0) return 0
  if (each === undefined)
    throw new StageError(
      'storage.cost_usd_per_unit',
      'what a unit of storage costs in place is not known',
      'State storage.cost_usd_per_unit, and cost_fixed_usd where a part of the price is the same for every number.',
    )
  return fixed + units * each
}
