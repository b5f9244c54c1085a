import { StageError, Worksheet, type Result } from '../../worksheet/index.js'
import {
  computeSavings,
  gridAround,
  houseLedgers,
  savingsCurve,
  type HouseEnergy,
  type SavingsValues,
} from '../bill/index.js'
import {
  cashFlow,
  checkLoan,
  checkThirdParty,
  readFinance,
  readIncentives,
  reportedDiscount,
  thirdPartyOf,
  type CashFlowInput,
} from '../cash-flow/index.js'
import type { RateSheet } from '../tariff/index.js'
import { drawCashFlows, readSpread, sensitivity } from '../uncertainty/index.js'
import { tellYears, withPricesInCurves, yearCurves, yearsAhead } from '../years/index.js'
import { contractValues } from './contract-values.js'
import { curveVariants } from './curve-variants.js'
import { tellIncentives, tellWorth } from './payback-findings.js'
import { paybackMeaning } from './payback-meaning.js'
import { tellRunningCosts } from './tell-running-costs.js'
import { recordWorth } from './payback-proof.js'
import type { PaybackValues } from './payback-values.js'
import {
  cashFlowValues,
  cents,
  measureValues,
  rounded,
  sensitivityValues,
  termsValues,
  uncertaintyValues,
} from './report-values.js'
import type { PaybackInput } from './payback-input.js'
import { yearScales } from './year-scales.js'
import { batteryValues } from './battery-values.js'
import { batteryYears, withBattery, withReplacements, type BatteryHouse } from './battery-years.js'
import { worthOf } from './worth.js'
import type { KilowattHours } from '../../values/index.js'

/** Annual output, kWh. @throws StageError without one. */
export function annualOutput(energy: HouseEnergy): number {
  const series: ArrayLike<number> | undefined = energy.productionKwh
  if (series === undefined)
    throw new StageError('arrays', 'there is no output to pay back with', 'Run the energy estimate first.')
  let total = 0
  for (let i = 0; i < series.length; i++) total += series[i] ?? 0
  return total
}

function costOf(input: PaybackInput): number {
  const cost = input.finance.installed_cost_usd ?? input.billOfMaterialsUsd
  if (cost !== undefined && Number.isFinite(cost) && cost >= 0) return cost
  if (cost !== undefined) {
    const message = `${String(cost)} is no price in USD`
    throw new StageError('finance.installed_cost_usd', message, 'State the price before incentives, 0 or above.')
  }
  throw new StageError(
    'finance.installed_cost_usd',
    'the installed cost is not known',
    'State the price of the quote, or give a price list under materials.',
  )
}

/** @throws StageError when there is a battery and no hours. */
function batteryHouse({
  battery,
  energy,
  sheet,
  sheetWithSystem = sheet,
  calendar,
}: PaybackInput): BatteryHouse | undefined {
  if (battery === undefined) return undefined
  if (energy.kind === 'monthly' || energy.productionKwh === undefined)
    throw new StageError(
      'storage',
      'a battery needs use and output by the hour',
      'Add usage.load_shape, or use a meter export.',
    )
  const { usageKwh, productionKwh } = energy
  return { battery: battery.house, energy: { usageKwh, productionKwh }, sheet, sheetWithSystem, calendar }
}

/** kWh of the first year that lower the bill: own use, and exports where they are netted. */
function savedKwh(sheet: RateSheet, bills: SavingsValues): KilowattHours {
  const { usage_kwh, import_kwh, generation_kwh, lost_kwh } = bills.with
  if (sheet.solar.rule === 'unpaid' || sheet.solar.rule === 'net billing') return usage_kwh - import_kwh
  return generation_kwh - lost_kwh
}

/**
 * Cost, savings, payback and their uncertainty.
 *
 * @throws StageError when the cost or the output is missing, and as `computeBill`, `readFinance` and `incentiveFlows`.
 * @limits Bills of later years keep the tariff's structure, prices and use, but for what the project says of them.
 */
export function payback(input: PaybackInput): Result<PaybackValues> {
  const worksheet = new Worksheet()
  const { sheet, calendar, incentives } = input
  const sheetWithSystem = input.sheetWithSystem ?? sheet
  const battery = batteryHouse(input)
  const energy = battery === undefined ? input.energy : withBattery(battery.energy, battery.battery)
  const firstYearKwh = annualOutput(energy)
  const grossCostUsd = thirdPartyOf(input.finance) === undefined ? costOf(input) : 0
  const stated = readFinance(input.finance, worksheet, input.degradationPct)
  checkThirdParty(input.finance, incentives, stated.years, worksheet)
  const spread = readSpread(input.finance.uncertainty ?? {}, worksheet)
  const ledgers = houseLedgers(sheet, energy, calendar, sheetWithSystem)
  const bills = computeSavings(sheet, energy, calendar, sheetWithSystem, ledgers)
  worksheet.include(bills)
  const scales = yearScales(stated)
  const house = { sheet, sheetWithSystem, energy, calendar, ledgers }
  const curve = savingsCurve({ ...house, extraScales: scales })
  const years = yearsAhead({
    sheet,
    sheetWithSystem,
    energy,
    usageOf: input.usageOf,
    calendar,
    terms: stated,
    baseYear: input.finance.base_year,
    scalesOf: (year) => [...gridAround(0.1, 2), scales[year - 1] ?? 1],
  })
  const terms = years === undefined ? stated : withPricesInCurves(stated)
  const curves = years === undefined ? {} : { curves: yearCurves(years) }
  const curveIn = (year: number) => curves.curves?.[year - 1] ?? curve
  const life =
    battery === undefined ? undefined : batteryYears({ ...battery, years, before: ledgers.before }, curveIn, scales)
  const finance =
    battery === undefined || life === undefined
      ? input.finance
      : withReplacements(input.finance, battery.battery, life.life)
  const { dcRatingW } = input
  const base: CashFlowInput = {
    curve,
    ...curves,
    firstYearKwh,
    grossCostUsd,
    dcRatingW,
    finance,
    incentives,
    terms,
    ...(life === undefined ? {} : { fadeUsd: life.fadeUsd }),
  }
  readIncentives(incentives, base, worksheet)
  const flow = cashFlow(base)
  checkLoan(finance, grossCostUsd, flow.incentives.lumps[0] ?? 0, worksheet)
  const worth = worthOf(flow, terms)
  recordWorth(worksheet, flow, terms, worth)
  tellIncentives(worksheet, incentives, flow, grossCostUsd)
  tellWorth(worksheet, base, worth)
  tellRunningCosts(worksheet, base, worth)
  const hasOneRise = stated.priceParts === undefined && sheet.later.length === 0
  const lumps = flow.incentives.lumps.reduce((a, b) => a + b, 0)
  const lcoe = worth.levelisedCostUsdPerKwh
  const contract = contractValues(flow, worth.npvUsd, worksheet)
  const saved = savedKwh(sheetWithSystem, bills.values)
  return worksheet.result({
    ...termsValues(hasOneRise ? stated : terms),
    gross_cost_usd: cents(grossCostUsd),
    incentives_usd: cents(lumps),
    net_cost_usd: cents(grossCostUsd - lumps),
    first_year_kwh: rounded(firstYearKwh, 1),
    first_year_savings_usd: bills.values.annual_savings_usd,
    bills: bills.values,
    cash_flow: cashFlowValues(flow, reportedDiscount(terms)),
    payback_means: paybackMeaning(finance),
    ...measureValues(flow, terms, worth),
    lcoe_usd_per_kwh: lcoe === undefined ? null : rounded(lcoe, 5),
    cost_per_kwh_saved_usd: lcoe === undefined || saved <= 0 ? null : rounded((lcoe * firstYearKwh) / saved, 5),
    ...(contract === undefined ? {} : { contract }),
    ...(years === undefined ? {} : { years_ahead: tellYears(years, worksheet) }),
    uncertainty: uncertaintyValues(spread, drawCashFlows(base, flow, spread, input.cashBand), contract === undefined),
    sensitivity:
      input.brief === true
        ? []
        : sensitivityValues(sensitivity(base, spread, curveVariants({ ...house, scales, curve, years }))),
    ...(battery === undefined || life === undefined
      ? {}
      : {
          storage: batteryValues(
            input,
            { house: { ...battery, years }, years: life, terms, bills: bills.values },
            worksheet,
          ),
        }),
  })
}
