import { rangeBars } from '../../charts/index.js'
import type { PageBlock } from '../../pages/index.js'
import type { Offer } from '../offer.js'

/** What it makes, month by month, each with its range. */
export function energyBlocks({ values, say, textPt }: Offer): PageBlock[] {
  const { energy } = values
  const { monthly, first_year: year } = energy
  const by = monthly.toSorted((a, b) => a.p50_kwh - b.p50_kwh)
  const [least, most] = [by[0], by.at(-1)]
  const bars = monthly.map(({ month, p90_kwh, p50_kwh, p10_kwh }) => ({
    name: say.month(month, 'short'),
    low: p90_kwh,
    middle: p50_kwh,
    high: p10_kwh,
  }))
  const kwh = (value: number): string => say.number(value)
  return [
    { kind: 'heading', text: say.text('energy_title') },
    {
      kind: 'figure',
      says: say.text('energy_says', {
        least: kwh(least?.p50_kwh ?? 0),
        least_month: say.month(least?.month ?? 1),
        most: kwh(most?.p50_kwh ?? 0),
        most_month: say.month(most?.month ?? 1),
      }),
      caption: say.text('energy_caption'),
      heightPt: 140,
      draw: rangeBars(bars, { heightPt: 140, sizePt: textPt, written: kwh }),
      data: {
        heading: say.text('energy_data'),
        columns: [
          { heading: say.text('month'), share: 2, bold: true },
          { heading: say.text('low_kwh'), share: 1, align: 'right' },
          { heading: say.text('middle_kwh'), share: 1, align: 'right' },
          { heading: say.text('high_kwh'), share: 1, align: 'right' },
        ],
        rows: monthly.map(({ month, p90_kwh, p50_kwh, p10_kwh }) => [
          say.month(month),
          kwh(p90_kwh),
          kwh(p50_kwh),
          kwh(p10_kwh),
        ]),
      },
    },
    {
      kind: 'text',
      text: say.text('energy_year', {
        low: kwh(year.p90_kwh),
        high: kwh(year.p10_kwh),
        degradation: say.percent(energy.degradation_pct_per_year, 2),
      }),
    },
    {
      kind: 'table',
      columns: [
        { heading: say.text('year'), share: 1.6, bold: true },
        ...energy.years.map(({ year: at }) => ({ heading: say.number(at), share: 1, align: 'right' as const })),
      ],
      rows: [[say.text('energy_kwh'), ...energy.years.map((each) => kwh(each.kwh))]],
    },
    {
      kind: 'text',
      text: say.text('energy_used', {
        use: kwh(energy.use_kwh),
        own: kwh(energy.own_use_kwh),
        export: kwh(energy.export_kwh),
        import: kwh(energy.import_kwh),
        offset: say.percent(energy.offset_pct),
      }),
    },
    { kind: 'box', lines: [say.text('warn_estimate'), say.text('warn_outage')] },
  ]
}
