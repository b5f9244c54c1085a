import type { StorageFlows } from '../../storage/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { savingsCurve, type SavingsValues } from '../bill/index.js'
import { hoursOf, partsOf } from '../calendar/index.js'
import { cashFlow, type FinanceTerms } from '../cash-flow/index.js'
import {
  behindMeter,
  noBattery,
  roundKwh,
  runStorage,
  storageEnergy,
  storageOptimum,
  storageOutage,
  type StorageValues,
} from '../storage/index.js'
import { yearCurves } from '../years/index.js'
import type { BatteryHouse, BatteryYears } from './battery-years.js'
import type { PaybackInput } from './payback-input.js'
import { cents, rounded } from './report-values.js'
import { worthOf } from './worth.js'
import { yearScales } from './year-scales.js'

/** What is known of a battery once the payback with it is worked out. */
interface Known {
  readonly house: BatteryHouse
  readonly years: BatteryYears
  readonly terms: FinanceTerms
  readonly bills: SavingsValues
}

/** Everything about the battery of a project: first year, years of the study, outages, and the same house without it. */
export function batteryValues(input: PaybackInput, known: Known, worksheet: Worksheet): StorageValues {
  const { house, years, bills } = known
  const { battery, energy, sheetWithSystem, calendar } = house
  const run = runStorage(battery.system, energy.usageKwh, energy.productionKwh)
  const own = storageEnergy(battery, energy, run, years.life, worksheet)
  const without = withoutBattery(input, known)
  const saved = cents(bills.annual_savings_usd - without.first_year_savings_usd)
  worksheet.step({
    id: 'storage.savings',
    says: 'Saved by the battery in the first year, beside the modules alone',
    formula: 'S_b = S - S_pv',
    inputs: [
      { symbol: 'S', value: bills.annual_savings_usd, unit: 'USD', from: 'savings.year-1' },
      {
        symbol: 'S_pv',
        value: without.first_year_savings_usd,
        unit: 'USD',
        from: 'the same bills without the battery',
      },
    ],
    result: { symbol: 'S_b', value: saved, unit: 'USD' },
    source: house.sheet.source,
  })
  const outage = storageOutage(
    battery,
    hoursOf(energy.productionKwh),
    hourEnds(run.flows),
    calendar,
    input.battery?.acKw ?? Infinity,
    worksheet,
  )
  return {
    ...own,
    without: { ...own.without, ...without },
    first_year_savings_usd: saved,
    years: years.life.years.map(({ year, capacityPct, run: ofYear, replaced }, i) => ({
      year,
      capacity_pct: rounded(capacityPct, 2),
      discharged_kwh: roundKwh(ofYear.dischargedKwh),
      full_cycles: rounded(ofYear.use.fullCycles, 2),
      fade_usd: cents(years.fadeUsd[i] ?? 0) + 0,
      replaced,
    })),
    ...(input.battery?.optimum === true
      ? storageOptimum(battery, energy, run.flows, sheetWithSystem, calendar, worksheet)
      : {}),
    ...(outage === undefined ? {} : { outage }),
  }
}

/** What an outage starts from: what is stored at the end of each hour. */
function hourEnds({ storedKwh, startKwh }: StorageFlows): Pick<StorageFlows, 'storedKwh' | 'startKwh'> {
  const parts = partsOf(storedKwh)
  return { startKwh, storedKwh: parts === 1 ? storedKwh : storedKwh.filter((_, i) => i % parts === parts - 1) }
}

/** The same modules without the battery: their savings, and their worth where the price of the battery is known. */
function withoutBattery(
  input: PaybackInput,
  { house, terms }: Known,
): Pick<StorageValues['without'], 'first_year_savings_usd' | 'npv_usd' | 'payback_years'> {
  const { sheet, sheetWithSystem, calendar, energy, battery } = house
  const scales = yearScales(terms)
  // An export cap holds without the battery too.
  const none = { ...battery.system, battery: noBattery(battery.system.battery) }
  const plain = { kind: 'hourly' as const, ...energy, storage: behindMeter(none) }
  const curve = savingsCurve({ sheet, sheetWithSystem, energy: plain, calendar, grid: [], extraScales: [1, ...scales] })
  const curves = house.years === undefined ? {} : { curves: yearCurves(house.years, { storage: plain.storage }) }
  const saved = cents(curve.usdAt(curve.scales.indexOf(1)))
  const { cost_usd_per_unit: each, cost_fixed_usd: fixed = 0 } = battery.part.storage
  const gross = input.finance.installed_cost_usd ?? input.billOfMaterialsUsd
  if (each === undefined || gross === undefined)
    return { first_year_savings_usd: saved, npv_usd: null, payback_years: null }
  const flow = cashFlow({
    curve,
    ...curves,
    firstYearKwh: energy.productionKwh.reduce((a, b) => a + b, 0),
    grossCostUsd: Math.max(0, gross - each * battery.count - fixed),
    dcRatingW: input.dcRatingW,
    finance: input.finance,
    incentives: input.incentives,
    terms,
  })
  const worth = worthOf(flow, terms)
  const lasting = worth.simple.lasting
  return {
    first_year_savings_usd: saved,
    npv_usd: cents(worth.npvUsd),
    payback_years: lasting === undefined || !Number.isFinite(lasting) ? null : rounded(lasting, 2),
  }
}
