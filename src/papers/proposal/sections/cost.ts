import type { PageBlock } from '../../pages/index.js'
import type { Offer } from '../offer.js'
import type { LoanValues } from '../proposal-values.js'

/** The price before incentives first, then what may lower it, how it is paid, and what a loan makes of it. */
export function costBlocks(offer: Offer): PageBlock[] {
  const { values, stated, say } = offer
  return [
    { kind: 'heading', text: say.text('cost_title') },
    priceTable(offer),
    ...(values.cost.rest_usd !== null && values.cost.rest_usd < 0
      ? [{ kind: 'text', text: say.text('cost_bom_over') } as const]
      : []),
    ...incentiveBlocks(offer),
    { kind: 'box', lines: [say.text('warn_tax')] },
    { kind: 'heading', text: say.text('payments_title'), level: 3 },
    stated.payments === undefined
      ? { kind: 'text', text: say.text('payments_missing') }
      : {
          kind: 'table',
          columns: [
            { heading: say.text('payment_due'), share: 3 },
            { heading: say.text('cost_usd'), share: 1, align: 'right' },
          ],
          rows: stated.payments.map(({ due, usd }) => [due, say.number(usd, 2)]),
        },
    ...(values.loan === null ? [] : loanBlocks(values.loan, offer)),
    { kind: 'text', text: say.text('own_line') },
  ]
}

function priceTable({ values, say }: Offer): PageBlock {
  const { gross_usd: gross, lines, rest_usd: rest, detail } = values.cost
  const withQuantity = detail === 'lines' && lines.length > 0
  const row = (name: string, quantity: string, usd: number): string[] =>
    withQuantity ? [name, quantity, say.number(usd, 2)] : [name, say.number(usd, 2)]
  return {
    kind: 'table',
    total: true,
    columns: [
      { heading: say.text('cost_item'), share: 4 },
      ...(withQuantity ? [{ heading: say.text('cost_quantity'), share: 1, align: 'right' as const }] : []),
      { heading: say.text('cost_usd'), share: 1, align: 'right' },
    ],
    rows: [
      ...lines.map(({ name, quantity, usd }) => row(name, quantity, usd)),
      ...(rest === null || rest <= 0 ? [] : [row(say.text('cost_rest'), '', rest)]),
      row(say.text('cost_gross'), '', gross),
    ],
  }
}

function incentiveBlocks({ values, say }: Offer): PageBlock[] {
  const { incentives, incentives_usd: usd, net_usd: net } = values.cost
  if (incentives.length === 0) return [{ kind: 'text', text: say.text('incentive_none') }]
  return [
    { kind: 'heading', text: say.text('incentive_title'), level: 3 },
    {
      kind: 'table',
      columns: [
        { heading: say.text('incentive_name'), share: 2 },
        { heading: say.text('incentive_source'), share: 3 },
      ],
      rows: incentives.map(({ name, source, checked }) => [name, `${source}, ${say.date(checked)}`]),
    },
    { kind: 'text', text: say.text('incentive_line', { incentives: say.usd(usd), net: say.usd(net) }) },
  ]
}

function loanBlocks(loan: LoanValues, { say }: Offer): PageBlock[] {
  const payments = say.number(12 * loan.term_years)
  return [
    { kind: 'heading', text: say.text('loan_title'), level: 3 },
    {
      kind: 'facts',
      facts: [
        [say.text('loan_cash'), say.usd(loan.cash_price_usd)],
        [say.text('loan_all'), say.usd(loan.financed_price_usd)],
        [say.text('loan_principal'), say.usd(loan.principal_usd)],
        [say.text('loan_fee'), say.usd(loan.fee_usd)],
        [say.text('loan_down'), say.usd(loan.down_usd)],
        [say.text('loan_apr'), say.percent(loan.apr_pct, 2)],
        [say.text('loan_term'), say.text('loan_term_text', { years: say.number(loan.term_years), payments })],
        [say.text('loan_payment'), say.usd(loan.payment_usd_per_month)],
        [say.text('loan_total'), say.usd(loan.total_of_payments_usd)],
      ],
    },
    { kind: 'box', lines: [say.text('loan_note')] },
  ]
}

/** Scenarios beside this proposal; nothing without any. */
export function optionBlocks({ values, say }: Offer): PageBlock[] {
  const { options, payback } = values
  if (options.length === 0) return []
  const never = say.text('never', { study: say.number(payback.study_years) })
  const right = (key: 'options_cost' | 'options_kwh' | 'options_saved' | 'options_payback' | 'options_npv') =>
    ({ heading: say.text(key), share: 1.15, align: 'right' }) as const
  return [
    { kind: 'heading', text: say.text('options_title') },
    {
      kind: 'table',
      columns: [
        { heading: say.text('options_name'), share: 1.7, bold: true },
        right('options_cost'),
        right('options_kwh'),
        right('options_saved'),
        right('options_payback'),
        right('options_npv'),
      ],
      rows: options.map((one) => [
        one.name,
        say.number(one.cost_usd),
        say.number(one.first_year_kwh),
        say.number(one.saved_first_year_usd),
        one.payback_years === null ? never : say.number(one.payback_years, 1),
        say.number(one.npv_usd),
      ]),
    },
  ]
}
