import { bandChart, pairedBars } from '../../charts/index.js'
import type { PageBlock } from '../../pages/index.js'
import type { Offer } from '../offer.js'
import type { SavingsLine } from '../proposal-values.js'

/** Bills before and after, month by month. */
export function billBlocks({ project, values, stated, say, textPt }: Offer): PageBlock[] {
  const { bills, loan } = values
  const { tariff } = project
  const usd = (value: number): string => say.number(value)
  const pairs = bills.monthly.map(({ month, without_usd, with_usd }) => ({
    name: say.month(month, 'short'),
    values: [without_usd, with_usd] as const,
  }))
  const source = tariff?.source === undefined ? '' : `${tariff.source}.`
  const checked = tariff?.checked === undefined ? '' : say.text('tariff_checked', { date: say.date(tariff.checked) })
  const isOther = bills.tariff !== bills.tariff_with_system
  return [
    { kind: 'heading', text: say.text('bill_title') },
    {
      kind: 'figure',
      says: say.text('bill_says', { without: say.usd(bills.without_usd), with: say.usd(bills.with_usd) }),
      caption: say.text('bill_caption'),
      heightPt: 126,
      draw: pairedBars(pairs, { heightPt: 126, sizePt: textPt, written: usd }),
      data: {
        heading: say.text('bill_data'),
        columns: [
          { heading: say.text('month'), share: 2, bold: true },
          { heading: say.text('without_usd'), share: 1, align: 'right' },
          { heading: say.text('with_usd'), share: 1, align: 'right' },
        ],
        rows: [
          ...bills.monthly.map(({ month, without_usd, with_usd }) => [
            say.month(month),
            usd(without_usd),
            usd(with_usd),
          ]),
          [say.text('whole_year'), usd(bills.without_usd), usd(bills.with_usd)],
        ],
      },
    },
    {
      kind: 'text',
      text: [
        say.text('tariff_line', { tariff: bills.tariff, source, checked }),
        ...(isOther ? [say.text('tariff_after', { tariff: bills.tariff_with_system })] : []),
        stated.export_rule === undefined
          ? say.text('export_unknown')
          : say.text('export_line', { rule: stated.export_rule }),
      ].join(' '),
    },
    { kind: 'box', lines: [say.text('warn_rules'), say.text(loan === null ? 'first_bill' : 'first_bill_loan')] },
  ]
}

/** Savings at several assumed changes of price, the unchanged one first. */
export function savingsBlocks(offer: Offer): PageBlock[] {
  const { values, stated, payback, say } = offer
  const { savings } = values
  const study = say.number(values.payback.study_years)
  const inflation = say.percent(payback.inflation_pct, 1)
  const basis = stated.escalation_basis ?? say.text('rise_default', { inflation })
  return [
    { kind: 'heading', text: say.text('savings_title', { years: say.number(savings.years) }) },
    {
      kind: 'table',
      columns: [
        { heading: say.text('savings_head'), share: 2.4, bold: true },
        { heading: say.text('savings_saved'), share: 1.3, align: 'right' },
        { heading: say.text('savings_payback'), share: 1.1, align: 'right' },
      ],
      rows: savings.lines.map((line) => [
        riseText(line, offer),
        say.number(line.saved_usd),
        line.payback_years === null ? say.text('never', { study }) : say.number(line.payback_years, 1),
      ]),
    },
    {
      kind: 'text',
      text: [
        say.text(savings.money === 'real' ? 'savings_real' : 'savings_nominal'),
        say.text('savings_less'),
        say.text('rise_basis', { basis }),
      ].join(' '),
    },
  ]
}

function riseText({ kind, rise_pct: pct }: SavingsLine, { say }: Offer): string {
  if (kind === 'unchanged') return say.text('rise_unchanged')
  if (pct === null) return say.text('rise_index')
  return say.text(`rise_${kind}`, { rise: say.percent(pct, 1) })
}

/** The running sum of all costs and savings with its band. */
export function cashBlocks({ values, say, textPt }: Offer): PageBlock[] {
  const { cash, payback } = values
  const points = cash.map(({ year, p90_usd, p50_usd, p10_usd }) => ({
    at: year,
    low: p90_usd,
    middle: p50_usd,
    high: p10_usd,
  }))
  const usd = (value: number): string => say.number(value)
  const irr =
    payback.irr_pct === null ? say.text('irr_none') : say.text('irr_line', { irr: say.percent(payback.irr_pct, 1) })
  return [
    { kind: 'heading', text: say.text('cash_title') },
    {
      kind: 'figure',
      says: say.text('cash_says', {
        start: say.usd(cash[0]?.p50_usd ?? 0),
        end: say.usd(cash.at(-1)?.p50_usd ?? 0),
        years: say.number(payback.study_years),
      }),
      caption: say.text('cash_caption'),
      heightPt: 140,
      draw: bandChart(points, {
        heightPt: 140,
        sizePt: textPt,
        written: (value) => say.number(value / 1000, value % 1000 === 0 ? 0 : 1),
        writtenAt: (year) => say.number(year),
      }),
      data: {
        heading: say.text('cash_data'),
        columns: [
          { heading: say.text('year'), share: 1, bold: true },
          { heading: say.text('low_usd'), share: 1, align: 'right' },
          { heading: say.text('middle_usd'), share: 1, align: 'right' },
          { heading: say.text('high_usd'), share: 1, align: 'right' },
        ],
        rows: cash.map(({ year, p90_usd, p50_usd, p10_usd }) => [
          say.number(year),
          usd(p90_usd),
          usd(p50_usd),
          usd(p10_usd),
        ]),
      },
    },
    {
      kind: 'text',
      text: say.text('worth_line', {
        rate: say.percent(payback.discount_pct, 1),
        npv: say.usd(payback.npv_usd),
        irr,
      }),
    },
  ]
}
