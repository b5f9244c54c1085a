import { countFitted } from '../../roof/index.js'
import { runHouse, type HouseOptions } from '../../house/index.js'
import type { PaybackValues } from '../../money/index.js'
import { loadProject } from '../../project/index.js'
import { StageError, type Finding } from '../../worksheet/index.js'
import { UsageError } from '../errors.js'
import { type Cell, formatNumber, type TableData } from '../../report/index.js'

/** What scenarios are compared by; names and units are part of the JSON format. */
export interface ScenarioValues {
  readonly scenario: string
  readonly gross_cost_usd: number
  readonly net_cost_usd: number
  readonly first_year_kwh: number
  readonly first_year_savings_usd: number
  /** For good, as the discounted one; null = not within the study. */
  readonly simple_payback_years: number | null
  readonly discounted_payback_years: number | null
  readonly npv_usd: number
  readonly npv_p90_usd: number | null
  readonly sir: number | null
  readonly airr_pct: number | null
  readonly lcoe_usd_per_kwh: number | null
  /** Under a lease or a power purchase; the saving of the first year is less its payments. */
  readonly contract?: PaybackValues['contract']
}

export interface Scenario {
  readonly values: ScenarioValues
  /** Energy of the first year that is as likely missed as reached, at most the mean, kWh. */
  readonly middleKwh: number
  readonly findings: readonly Finding[]
}

interface Base {
  readonly path: string
  readonly set: readonly string[]
  readonly allowOutside: boolean | undefined
  /** Where the price of this project and its variants comes from. */
  readonly house: HouseOptions
}

/**
 * Works out one `--versus`: another project file, or this one with values changed.
 *
 * A file brings its own price; `--set`, `--cost` and `--use` count for this project and its variants.
 */
export async function runScenario(text: string, base: Base): Promise<Scenario> {
  const isVariant = /^[\w.]+\s*=/u.test(text)
  if (isVariant && base.path === '-') {
    throw new UsageError(`--versus ${text}: a variant needs the project as a file, not from stdin`)
  }
  const changes = isVariant ? text.split(';').map((one) => one.trim()) : []
  const statesCost = changes.some((change) => change.startsWith('finance.installed_cost_usd'))
  const loaded = loadProject({
    path: isVariant ? base.path : text,
    overrides: isVariant ? [...base.set, ...changes] : [],
    allowOutside: base.allowOutside === true,
  })
  try {
    const input = { ...loaded, project: countFitted(loaded.project) }
    const house = runHouse(input, isVariant && !statesCost ? base.house : {})
    const result = await house.payback()
    const { annual, exceedance } = (await house.estimate()).result.values
    return {
      values: scenarioValues(isVariant ? text : loaded.project.title, result.values),
      middleKwh: Math.min(annual.ac_kwh, exceedance.first_year.p50_kwh),
      findings: result.findings,
    }
  } catch (error) {
    if (!(error instanceof StageError)) throw error
    // Its place is in another file, or in a value of the command line.
    throw new StageError('', `--versus ${text}: ${error.where}: ${error.message}`, error.fix)
  }
}

export function scenarioValues(scenario: string, values: PaybackValues): ScenarioValues {
  return {
    scenario,
    gross_cost_usd: values.gross_cost_usd,
    net_cost_usd: values.net_cost_usd,
    first_year_kwh: values.first_year_kwh,
    first_year_savings_usd: values.contract?.first_year_saving_usd ?? values.first_year_savings_usd,
    simple_payback_years: values.simple_payback.lasting_years,
    discounted_payback_years: values.discounted_payback.lasting_years,
    npv_usd: values.npv_usd,
    npv_p90_usd: values.uncertainty.npv_usd.p90,
    sir: values.sir,
    airr_pct: values.airr_pct,
    lcoe_usd_per_kwh: values.lcoe_usd_per_kwh,
    ...(values.contract === undefined ? {} : { contract: values.contract }),
  }
}

/** This project and its scenarios side by side, a column each. */
export function sideBySide(values: PaybackValues, scenarios: readonly Scenario[]): TableData {
  const all = [scenarioValues('this project', values), ...scenarios.map((scenario) => scenario.values)]
  const row = (label: string, of: (one: ScenarioValues) => number | null, decimals = 0): Cell[] => [
    label,
    ...all.map((one) => {
      const value = of(one)
      return value === null ? '-' : formatNumber(value, decimals)
    }),
  ]
  return {
    columns: [
      { heading: '', key: 'measure' },
      ...all.map((one) => ({ heading: one.scenario, align: 'right' as const })),
    ],
    rows: [
      row('Net cost (USD)', (one) => one.net_cost_usd),
      row('Output of the first year (kWh)', (one) => one.first_year_kwh),
      row('Saved in the first year (USD)', (one) => one.first_year_savings_usd, 2),
      row('Simple payback (years)', (one) => one.simple_payback_years, 1),
      row('Discounted payback (years)', (one) => one.discounted_payback_years, 1),
      row('NPV (USD)', (one) => one.npv_usd),
      row('NPV, P90 (USD)', (one) => one.npv_p90_usd),
      row('SIR', (one) => one.sir, 2),
      row('AIRR (%)', (one) => one.airr_pct, 2),
      row('LCOE (USD/kWh)', (one) => one.lcoe_usd_per_kwh, 4),
      ...(all.every((one) => one.contract === undefined)
        ? []
        : [
            row('Contract: payments (USD)', (one) => one.contract?.payments_usd ?? null),
            row('Contract: saved in all (USD)', (one) => one.contract?.saving_usd ?? null),
            row('Contract: first year that costs more', (one) => one.contract?.first_negative_year ?? null),
          ]),
    ],
  }
}

/** The same for a spreadsheet, a row each. */
export function scenarioTable(values: PaybackValues, scenarios: readonly Scenario[]): TableData {
  const rows = [scenarioValues('this project', values), ...scenarios.map((scenario) => scenario.values)]
  return {
    columns: [
      { heading: 'Scenario' },
      { heading: 'Net cost', unit: 'USD' },
      { heading: 'Output', unit: 'kWh' },
      { heading: 'Saved in year 1', unit: 'USD' },
      { heading: 'Payback', unit: 'years', decimals: 1 },
      { heading: 'NPV', unit: 'USD' },
      { heading: 'NPV P90', unit: 'USD' },
      { heading: 'SIR', decimals: 2 },
      { heading: 'AIRR', unit: '%', decimals: 2 },
      { heading: 'LCOE', unit: 'USD/kWh', decimals: 4 },
    ],
    rows: rows.map((row) => [
      row.scenario,
      row.net_cost_usd,
      row.first_year_kwh,
      row.first_year_savings_usd,
      row.simple_payback_years,
      row.npv_usd,
      row.npv_p90_usd,
      row.sir,
      row.airr_pct,
      row.lcoe_usd_per_kwh,
    ]),
  }
}
