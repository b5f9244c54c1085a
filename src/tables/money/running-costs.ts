import type { Source } from '../../worksheet/index.js'

const PRACTICE: Source = { document: '', standing: 'common practice, no source' }

/** Costs and incomes that count as none while the project does not state them. */
export const NO_RUNNING_COSTS = [
  {
    key: 'replacements',
    value: 'none',
    unit: '',
    why: 'no part is counted as replaced; inverters often do not last as long as modules',
    source: PRACTICE,
  },
  {
    key: 'maintenance_usd_per_year',
    value: 0,
    unit: 'USD/year',
    why: 'no upkeep is counted: no cleaning, no inspection, no repair',
    source: PRACTICE,
  },
  {
    key: 'insurance_usd_per_year',
    value: 0,
    unit: 'USD/year',
    why: 'no dearer insurance is counted; ask the insurer of the house',
    source: PRACTICE,
  },
  {
    key: 'other_income_usd_per_year',
    value: 0,
    unit: 'USD/year',
    why: 'no income beside the bill and the incentives is counted',
    source: PRACTICE,
  },
  {
    key: 'residual_usd',
    value: 0,
    unit: 'USD',
    why: 'what the system is worth at the end is taken to pay for taking it down',
    source: PRACTICE,
  },
] as const satisfies readonly {
  readonly key: string
  readonly value: number | string
  readonly unit: string
  readonly why: string
  readonly source: Source
}[]

/** What running a system usually costs: only to show what leaving it out is worth, never counted by itself. */
export const TYPICAL_RUNNING_COSTS = {
  inverterYear: 13,
  inverterUsdPerW: 0.25,
  upkeepUsdPerKwYear: 10,
  source: {
    document:
      'Round figures for small roof systems: one inverter at half the life of the modules, and a visit every few years',
    standing: 'common practice, no source',
  },
} as const satisfies { readonly source: Source; readonly [key: string]: number | Source }
