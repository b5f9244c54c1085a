import type { PageBlock } from '../../pages/index.js'
import { partyText, type Offer } from '../offer.js'
import type { Cancellation } from '../proposal-values.js'
import { roofBlocks } from './roof.js'

/** Who offers what to whom, the right to cancel, and the few figures that matter most. */
export function openingBlocks(offer: Offer): PageBlock[] {
  const { project, say, stated } = offer
  const { parties = {}, document } = project
  const fact = (name: string, value: string | undefined): (readonly [string, string])[] =>
    value === undefined || value === '' ? [] : [[name, value]]
  const day = (date: string | undefined): string | undefined => (date === undefined ? undefined : say.date(date))
  return [
    { kind: 'title', text: say.text('title'), below: project.title },
    ...(document?.invented === true ? [{ kind: 'text', text: say.text('invented') } as const] : []),
    {
      kind: 'facts',
      facts: [
        ...fact(
          say.text('seller'),
          partyText(parties.installer ?? parties.preparer, say) ?? say.text('seller_unstated'),
        ),
        ...fact(say.text('customer'), partyText(parties.owner, say) ?? say.text('unknown')),
        ...(offer.customer ?? []),
        ...fact(say.text('site'), project.site.address),
        ...fact(say.text('number'), stated.number),
        ...fact(say.text('date'), day(document?.date)),
        ...fact(say.text('valid_until'), day(stated.valid_until)),
      ],
    },
    cancelBox(offer),
    { kind: 'heading', text: say.text('short_title') },
    { kind: 'facts', facts: inShort(offer) },
    ...roofBlocks(offer),
  ]
}

function cancelBox({ values, say, stated, rules }: Offer): PageBlock {
  const { cancellation, rule_set: ruleSet } = values
  const where = stated.cancel_email
  return {
    kind: 'box',
    title: say.text('cancel_title'),
    sizePt: rules.cancelPt,
    tone: 'warning',
    lines: [
      ...(cancellation === null ? [say.text('cancel_none')] : rightWords(cancellation, { say, stated })),
      ...(where === undefined ? [] : [say.text('cancel_to', { where })]),
      ...(stated.help_phone === undefined ? [] : [say.text('cancel_call', { phone: stated.help_phone })]),
      ...(ruleSet === 'nevada' ? [say.text('nevada_call')] : []),
    ],
  }
}

function rightWords(right: Cancellation, { say, stated }: Pick<Offer, 'say' | 'stated'>): string[] {
  const { signing_date: signed } = stated
  return [
    say.text('cancel_days', { days: say.number(right.business_days) }),
    signed === undefined || right.last_day === null
      ? say.text('cancel_open')
      : say.text('cancel_last', { signed: say.date(signed), last: say.date(right.last_day) }),
  ]
}

function inShort({ values, say }: Offer): (readonly [string, string])[] {
  const { cost, energy, bills, savings, size } = values
  const { p90_kwh, p50_kwh, p10_kwh } = energy.first_year
  return [
    [
      say.text('short_size'),
      say.text('size_text', {
        modules: say.number(size.modules),
        dc: say.number(size.dc_kw, 2),
        ac: say.number(size.ac_kw, 2),
      }),
    ],
    [say.text('short_price'), say.usd(cost.gross_usd)],
    [
      say.text('short_energy'),
      say.text('energy_range', { low: say.number(p90_kwh), high: say.number(p10_kwh), middle: say.number(p50_kwh) }),
    ],
    [
      say.text('short_bill'),
      say.text('bill_change', { without: say.usd(bills.without_usd), with: say.usd(bills.with_usd) }),
    ],
    [say.text('short_saved', { years: say.number(savings.years) }), savedText({ values, say })],
    [say.text('short_payback'), paybackText({ values, say })],
  ]
}

function savedText({ values, say }: Pick<Offer, 'values' | 'say'>): string {
  const { lines } = values.savings
  const low = say.usd(lines[0]?.saved_usd ?? 0)
  const assumed = lines.find(({ kind }) => kind === 'assumed')
  if (assumed === undefined) return say.text('saved_one', { low })
  const fill = { low, assumed: say.usd(assumed.saved_usd) }
  if (assumed.rise_pct === null) return say.text('saved_index', fill)
  return say.text('saved_span', { ...fill, rise: say.percent(assumed.rise_pct, 1) })
}

function paybackText({ values, say }: Pick<Offer, 'values' | 'say'>): string {
  const { years, p90_years: slow, study_years: study } = values.payback
  if (years === null) return say.text('payback_never', { study: say.number(study) })
  if (slow === null) return say.text('payback_years_open', { years: say.number(years, 1), study: say.number(study) })
  return say.text('payback_years', { years: say.number(years, 1), slow: say.number(slow, 1) })
}
