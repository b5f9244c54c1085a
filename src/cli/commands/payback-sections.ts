import type { ContractValues, PaybackValues, PaybackYearsValues } from '../../money/index.js'
import { type Cell, type Column, type Fact, formatNumber, type Section, type TableData } from '../../report/index.js'
import { storageSections } from './storage-sections.js'
import { monthlyBillTable } from './bill-sections.js'
import { sideBySide, type Scenario } from './payback-versus.js'

type Row = PaybackValues['cash_flow'][number]

export function paybackSections(values: PaybackValues, scenarios: readonly Scenario[]): Section[] {
  return [
    {
      kind: 'facts',
      facts: values.contract === undefined ? measures(values) : contractMeasures(values, values.contract),
    },
    { kind: 'paragraph', text: `Payback: ${values.payback_means}.` },
    ...(scenarios.length === 0
      ? []
      : [{ kind: 'table' as const, heading: 'Side by side', ...sideBySide(values, scenarios) }]),
    { kind: 'table', heading: 'Bills of the first year', ...monthlyBillTable(values.bills) },
    ...yearsTable(values),
    ...(values.storage === undefined ? [] : storageSections(values.storage)),
    { kind: 'table', heading: `Year by year (${moneyWords(values)})`, ...cashFlowTable(values, 'used') },
    {
      kind: 'plot',
      heading: hasLoan(values)
        ? 'What the system has brought so far, less what is owed on the loan'
        : 'What the system has brought so far',
      x: { label: 'Year' },
      y: { label: 'Sum', unit: 'USD' },
      series: [
        { name: 'sum', points: values.cash_flow.map((row) => [row.year, row.cumulative_less_owed_usd] as const) },
        {
          name: 'discounted',
          points: values.cash_flow.map((row) => [row.year, row.discounted_cumulative_less_owed_usd] as const),
        },
      ],
    },
    ...uncertaintySections(values),
    sensitivitySection(values),
  ]
}

function moneyWords({ money }: PaybackValues): string {
  return money === 'real' ? 'USD of the purchase year' : 'USD of each year'
}

function hasLoan({ cash_flow: rows }: PaybackValues): boolean {
  return rows.some((row) => row.loan_received_usd > 0)
}

/** `12.3 years`; with the first time in words where a later cost undoes it, and the words for one that is none. */
function paybackFact(payback: PaybackYearsValues, studied: number): Pick<Fact, 'value' | 'unit' | 'decimals'> {
  const { lasting_years: lasting, years: first, dips_again_year: dips } = payback
  const undone = dips === null ? '' : ` (first after ${(first ?? 0).toFixed(1)} years; undone in year ${String(dips)})`
  if (lasting === null) return { value: `not within ${String(studied)} years${undone}` }
  if (lasting === 0) return { value: 'at purchase: nothing is left to pay back' }
  return dips === null
    ? { value: lasting, unit: 'years', decimals: 1 }
    : { value: `${lasting.toFixed(1)} years${undone}` }
}

function measures(values: PaybackValues): Fact[] {
  const { irr } = values
  const irrLabel = hasLoan(values) ? 'Internal rate of return on own money' : 'Internal rate of return'
  return [
    { label: 'Cost before incentives', value: values.gross_cost_usd, unit: 'USD' },
    { label: 'Incentives', value: values.incentives_usd, unit: 'USD' },
    { label: 'Net cost', value: { value: values.net_cost_usd, tone: 'strong' }, unit: 'USD' },
    { label: 'Output of the first year', value: values.first_year_kwh, unit: 'kWh' },
    {
      label: 'Saved in the first year',
      value: { value: values.first_year_savings_usd, tone: 'strong' },
      unit: 'USD',
      decimals: 2,
    },
    { label: 'Simple payback', ...paybackFact(values.simple_payback, values.years) },
    { label: 'Discounted payback', ...paybackFact(values.discounted_payback, values.years) },
    { label: `Net present value over ${String(values.years)} years`, value: values.npv_usd, unit: 'USD' },
    {
      label: 'The same at 0, 3, 7 % real',
      value: values.npv_at.map((one) => formatNumber(one.npv_usd)).join('; '),
      unit: 'USD',
    },
    irr.kind === 'one'
      ? { label: irrLabel, value: irr.rates_pct[0] ?? null, unit: '%', decimals: 2 }
      : {
          label: irrLabel,
          value: irr.kind === 'none' ? 'none' : irr.rates_pct.map(String).join(', '),
        },
    { label: 'Savings-to-investment ratio', value: values.sir ?? 'not defined', decimals: 2 },
    { label: 'Adjusted internal rate of return', ...orNone(values.airr_pct, '%', 2) },
    { label: 'Levelised cost of energy', ...orNone(values.lcoe_usd_per_kwh, 'USD/kWh', 4) },
    { label: 'Cost per kWh saved on the bill', ...orNone(values.cost_per_kwh_saved_usd, 'USD/kWh', 4) },
    moneyFact(values),
  ]
}

function moneyFact(values: PaybackValues): Fact {
  const escalation = values.real_escalation_pct
  const electricity =
    values.years_ahead !== undefined
      ? 'by the prices of each year'
      : escalation === null
        ? 'by the published price index'
        : `${String(escalation)} % a year above inflation`
  return {
    label: 'Money',
    value: `${values.money}; discounted at ${String(values.discount_rate_pct)} %; electricity ${electricity}`,
  }
}

/** What a lease or a power purchase comes to; there is nothing that could be paid back. */
function contractMeasures(values: PaybackValues, contract: ContractValues): Fact[] {
  const { first_negative_year: negative } = contract
  return [
    { label: 'The system belongs to', value: contract.kind === 'lease' ? 'a lessor' : 'a seller of its energy' },
    { label: 'Output of the first year', value: values.first_year_kwh, unit: 'kWh' },
    {
      label: 'Bills lower in the first year',
      value: values.cash_flow[1]?.bill_savings_usd ?? 0,
      unit: 'USD',
      decimals: 2,
    },
    { label: 'Payments of the first year', value: contract.first_year_payment_usd, unit: 'USD', decimals: 2 },
    {
      label: 'Saved in the first year',
      value: { value: contract.first_year_saving_usd, tone: 'strong' },
      unit: 'USD',
      decimals: 2,
    },
    {
      label: 'First year that costs more than it saves',
      value: negative ?? `none within ${String(values.years)} years`,
    },
    { label: `Payments over ${String(values.years)} years`, value: contract.payments_usd, unit: 'USD' },
    { label: `Saved over ${String(values.years)} years`, value: contract.saving_usd, unit: 'USD' },
    { label: 'The same in present value', value: { value: values.npv_usd, tone: 'strong' }, unit: 'USD' },
    ...contractTerms(contract),
    moneyFact(values),
  ]
}

/** What the contract says beside its payments. */
function contractTerms({ guarantee, buyout }: ContractValues): Fact[] {
  return [
    ...(guarantee === undefined
      ? []
      : [
          { label: 'Output guaranteed in the first year', value: guarantee.first_year_kwh, unit: 'kWh' },
          { label: 'Credits for output below it, by the estimate', value: guarantee.credits_usd, unit: 'USD' },
        ]),
    ...(buyout ?? []).map(({ after_year: year, usd }) => ({
      label: `Price of buying it after year ${String(year)} (not counted)`,
      value: usd,
      unit: 'USD',
    })),
  ]
}

/** Use and prices of each year, where they differ. */
function yearsTable({ years_ahead: years = [] }: PaybackValues): Section[] {
  if (years.length === 0) return []
  const hasContract = years.some((year) => year.contract_usd_per_kwh !== null)
  return [
    {
      kind: 'table',
      heading: 'What changes from year to year (prices in money of each year)',
      columns: [
        { heading: 'Year' },
        { heading: 'Use', unit: 'kWh' },
        { heading: 'Energy', unit: 'x printed price', decimals: 3 },
        { heading: 'Fixed', unit: 'x', decimals: 3 },
        { heading: 'Export', unit: 'x', decimals: 3 },
        ...(hasContract ? [{ heading: 'Promised', unit: 'USD/kWh', decimals: 4 }] : []),
        { heading: 'Rate sheet' },
      ],
      rows: years.map((year) => [
        year.calendar_year === null ? year.year : `${String(year.year)} (${String(year.calendar_year)})`,
        year.usage_kwh,
        year.energy_price_factor,
        year.fixed_price_factor,
        year.export_price_factor,
        ...(hasContract ? [year.contract_usd_per_kwh] : []),
        year.tariffs.join(', then '),
      ]),
    },
  ]
}

function orNone(value: number | null, unit: string, decimals: number): Pick<Fact, 'value' | 'unit' | 'decimals'> {
  return value === null ? { value: 'not defined' } : { value, unit, decimals }
}

interface FlowColumn {
  readonly column: Column
  readonly of: (row: Row) => number
}

const usd = (heading: string, key: string, of: (row: Row) => number): FlowColumn => ({
  column: { heading, unit: 'USD', key },
  of,
})

/** Columns that are left out of the text when every year is zero. */
const OPTIONAL: readonly FlowColumn[] = [
  usd('Per kWh paid', 'performance_usd', (row) => row.performance_usd),
  usd('Other income', 'other_income_usd', (row) => row.other_income_usd),
  usd('Upkeep', 'maintenance_and_insurance_usd', (row) => -row.maintenance_usd - row.insurance_usd),
  usd('Bought', 'purchase_usd', (row) => -row.purchase_usd),
  usd('Incentives', 'incentives_usd', (row) => row.incentives_usd),
  usd('Replaced', 'replacement_usd', (row) => -row.replacement_usd),
  usd('One-off', 'one_off_usd', (row) => -(row.one_off_usd ?? 0)),
  usd('Contract', 'contract_usd', (row) => -(row.contract_usd ?? 0)),
  usd('Guarantee', 'guarantee_usd', (row) => row.guarantee_usd ?? 0),
  usd('Left over', 'residual_usd', (row) => row.residual_usd),
  usd('Loan', 'loan_usd', (row) => row.loan_received_usd - row.loan_payment_usd - row.loan_payoff_usd),
]

/** Columns of what most projects have not; they stand in CSV only where the project states it. */
const ONLY_STATED = ['one_off_usd', 'contract_usd', 'guarantee_usd']

/** What a loan leaves to pay, after the sums; they are no part of a row's net. */
const OWED: readonly FlowColumn[] = [
  usd('Still owed', 'loan_owed_usd', (row) => row.loan_owed_usd),
  usd('Sum less owed', 'cumulative_less_owed_usd', (row) => row.cumulative_less_owed_usd),
]

/** The cash flow; signs are those of the owner's purse, so that a row adds up to its net. */
export function cashFlowTable(values: PaybackValues, which: 'all' | 'used'): TableData {
  const rows = values.cash_flow
  const stated = OPTIONAL.filter(
    ({ column: { key } }) =>
      !ONLY_STATED.includes(key ?? '') || rows.some((row) => key !== undefined && Object.hasOwn(row, key)),
  )
  const optional = stated.filter(({ of }) => which === 'all' || rows.some((row) => of(row) !== 0))
  const columns: FlowColumn[] = [
    usd('Bill savings', 'bill_savings_usd', (row) => row.bill_savings_usd),
    ...optional,
    usd('Net', 'net_usd', (row) => row.net_usd),
    usd('Sum', 'cumulative_usd', (row) => row.cumulative_usd),
    usd('Sum discounted', 'discounted_cumulative_usd', (row) => row.discounted_cumulative_usd),
    ...(which === 'all' || hasLoan(values) ? OWED : []),
  ]
  return {
    columns: [{ heading: 'Year' }, { heading: 'Output', unit: 'kWh' }, ...columns.map(({ column }) => column)],
    // Adding zero turns -0 into 0.
    rows: rows.map((row) => [row.year, row.output_kwh, ...columns.map(({ of }) => of(row) + 0)]),
  }
}

function uncertaintySections({ uncertainty, years, contract }: PaybackValues): Section[] {
  const never = contract === undefined ? `over ${String(years)}` : 'not defined'
  const row = (label: string, key: 'p10' | 'p50' | 'p90'): Cell[] => [
    label,
    uncertainty.payback_years[key]?.toFixed(1) ?? never,
    uncertainty.npv_usd[key],
  ]
  return [
    {
      kind: 'table',
      heading: 'How sure it is',
      columns: [
        { heading: 'In how many cases at least as good' },
        { heading: 'Payback', unit: 'years', align: 'right' },
        { heading: 'Net present value', unit: 'USD' },
      ],
      rows: [row('9 of 10 (P90)', 'p90'), row('half (P50)', 'p50'), row('1 of 10 (P10)', 'p10')],
    },
    {
      kind: 'list',
      items: [
        `drawn ${String(uncertainty.samples)} times with seed ${String(uncertainty.seed)}: yield ${pct(uncertainty.yield_sigma_pct)}, weather of each year ${pct(uncertainty.weather_sigma_pct)}, cost ${pct(uncertainty.cost_sigma_pct)}, price change ${uncertainty.escalation_sigma_pct.toFixed(1)} points a year (standard deviations)`,
        uncertainty.never_paid_back_pct === null
          ? `net present value below zero in ${pct(uncertainty.npv_below_zero_pct)} of the draws`
          : `never paid back in ${pct(uncertainty.never_paid_back_pct)} of the draws; net present value below zero in ${pct(uncertainty.npv_below_zero_pct)}`,
      ],
    },
  ]
}

const pct = (value: number): string => `${value.toFixed(1)} %`

function sensitivitySection({ sensitivity }: PaybackValues): Section {
  return {
    kind: 'table',
    heading: 'What moves the net present value (one at a time)',
    columns: [
      { heading: 'What' },
      { heading: 'From', align: 'right' },
      { heading: 'To', align: 'right' },
      { heading: 'NPV from', unit: 'USD' },
      { heading: 'NPV to', unit: 'USD' },
      { heading: 'Zero at', align: 'right' },
      { heading: '', key: 'bar' },
    ],
    rows: sensitivity.map((row) => [
      `${row.says} (${row.unit})`,
      shown(row.low),
      shown(row.high),
      row.npv_at_low_usd,
      row.npv_at_high_usd,
      row.break_even === null ? '' : shown(row.break_even),
      row.bar.slice(0, Math.ceil(row.bar.length / 3)),
    ]),
  }
}

/** Inputs are of very different size; each is shown with the digits that it needs. */
function shown(value: number): string {
  return Math.abs(value) >= 100 ? value.toFixed(0) : Number(value.toFixed(2)).toString()
}
