import type { ProposalValues } from '../../papers/index.js'
import { formatNumber, type Section, type TableData } from '../../report/index.js'

/** What an offer says, and which disclosures it lacks. */
export function proposalSections(values: ProposalValues): Section[] {
  const { energy, bills, cost, savings, payback, cancellation } = values
  const { p90_kwh, p50_kwh, p10_kwh } = energy.first_year
  return [
    {
      kind: 'facts',
      facts: [
        { label: 'Price before incentives', value: cost.gross_usd, unit: 'USD', decimals: 2 },
        {
          label: 'Energy of the first year, P90 to P10',
          value: `${formatNumber(p90_kwh)} to ${formatNumber(p10_kwh)}`,
          unit: 'kWh',
        },
        { label: 'Energy of the first year, P50', value: p50_kwh, unit: 'kWh' },
        {
          label: 'Bill without and with the system',
          value: `${formatNumber(bills.without_usd)} and ${formatNumber(bills.with_usd)}`,
          unit: 'USD',
        },
        {
          label: 'Paid back after',
          value: payback.years ?? 'never in the study',
          ...(payback.years === null ? {} : { unit: 'years', decimals: 1 }),
        },
        { label: 'Last day to cancel', value: cancellation?.last_day ?? 'not known' },
        { label: 'Rules', value: values.rule_set },
      ],
    },
    {
      kind: 'table',
      heading: `Savings over ${savings.years} years`,
      columns: [
        { heading: 'Price of electricity' },
        { heading: 'Change', unit: '%/year', decimals: 1 },
        { heading: 'Saved', unit: 'USD' },
        { heading: 'Paid back', unit: 'years', decimals: 1 },
      ],
      rows: savings.lines.map((line) => [line.kind, line.rise_pct ?? '-', line.saved_usd, line.payback_years ?? '-']),
    },
    { kind: 'table', heading: 'Disclosures', ...shortTable(values) },
  ]
}

function shortTable({ disclosures }: ProposalValues): TableData {
  return {
    columns: [{ heading: 'Point' }, { heading: 'Ask' }, { heading: 'Stands under' }, { heading: 'Supplied by' }],
    rows: disclosures.map(({ says, ask, state, stands_under: under, supplied_by: by }) => [
      says,
      ask,
      state === 'does_not_apply' ? 'does not apply' : (under ?? 'MISSING'),
      state === 'missing' ? by : '',
    ]),
  }
}

/** For scripts: every point with a column for everything. */
export function disclosureTable({ disclosures }: ProposalValues): TableData {
  return {
    columns: ['id', 'says', 'ask', 'rule', 'state', 'stands_under', 'supplied_by'].map((key) => ({
      heading: key,
      key,
    })),
    rows: disclosures.map((one) => [
      one.id,
      one.says,
      one.ask,
      one.rule,
      one.state,
      one.stands_under ?? '',
      one.supplied_by,
    ]),
  }
}
