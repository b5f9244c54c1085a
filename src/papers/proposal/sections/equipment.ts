import type { PageBlock } from '../../pages/index.js'
import type { Offer } from '../offer.js'

/** Equipment as it is named in the project, and warranties as they are stated. */
export function equipmentBlocks({ values, stated, say }: Offer): PageBlock[] {
  const warranties = Object.values(stated.warranties ?? {})
  const { maintenance } = stated
  const yes = (value: boolean | undefined): string => say.text(value === undefined ? 'unknown' : value ? 'yes' : 'no')
  return [
    { kind: 'heading', text: say.text('equipment_title') },
    {
      kind: 'table',
      columns: [
        { heading: say.text('equipment_name'), share: 4, bold: true },
        { heading: say.text('equipment_count'), share: 1, align: 'right' },
      ],
      rows: values.size.equipment.map(({ name, count }) => [name, say.number(count)]),
    },
    warranties.length === 0
      ? { kind: 'text', text: say.text('warranties_missing') }
      : {
          kind: 'table',
          columns: [
            { heading: say.text('warranty_covers'), share: 2.4, bold: true },
            { heading: say.text('warranty_years'), share: 0.7, align: 'right' },
            { heading: say.text('warranty_by'), share: 2 },
            { heading: say.text('warranty_moves'), share: 1 },
          ],
          rows: warranties.map(({ covers, years, given_by: by, transferable }) => [
            covers,
            say.number(years, Number.isInteger(years) ? 0 : 1),
            by,
            yes(transferable),
          ]),
        },
    { kind: 'text', text: say.text(`maintenance_${maintenance ?? 'unknown'}`) },
  ]
}

/** What the figures stand on, and what would change them. */
export function assumptionBlocks(offer: Offer): PageBlock[] {
  return [...assumedBlocks(offer), ...changeBlocks(offer)]
}

function changeBlocks({ values, say }: Offer): PageBlock[] {
  const { changes } = values
  const end = (value: number): string => say.number(value, Number.isInteger(value) ? 0 : 1)
  return [
    {
      kind: 'table',
      columns: [
        { heading: say.text('change_head'), share: 3, bold: true },
        { heading: say.text('change_from'), share: 1.3, align: 'right' },
        { heading: say.text('change_worth'), share: 2, align: 'right' },
      ],
      rows: changes.map(({ id, low, high, npv_at_low_usd: atLow, npv_at_high_usd: atHigh }) => [
        say.text(`change_${id}` as 'change_yield'),
        say.text('change_span', { low: end(low), high: end(high) }),
        say.text('change_span', { low: say.number(atLow), high: say.number(atHigh) }),
      ]),
    },
  ]
}

function assumedBlocks({ values, project, payback, yield: energy, say }: Offer): PageBlock[] {
  const { finance } = project
  const yearly = (usd: number | undefined): string =>
    usd === undefined ? say.text('unstated_zero') : say.text('per_year', { usd: say.usd(usd) })
  const { ladder } = energy
  const shadePct = ladder.plane === 0 ? 0 : 100 * (1 - ladder.shade / ladder.plane)
  const dirtPct = ladder.reflection === 0 ? 0 : 100 * (1 - ladder.dirt / ladder.reflection)
  const replacements = (finance?.replacements ?? []).map(({ name, year, usd }) =>
    say.text('replacement_item', { name, year: say.number(year), usd: say.usd(usd) }),
  )
  return [
    { kind: 'heading', text: say.text('assume_title') },
    {
      kind: 'list',
      items: [
        say.text('assume_weather', { weather: weatherText(energy, say) }),
        say.text('assume_method', { dirt: say.percent(dirtPct, 1), shade: say.percent(shadePct, 1) }),
        say.text('assume_use', { use: say.number(values.energy.use_kwh) }),
        say.text('assume_upkeep', {
          upkeep: yearly(finance?.maintenance_usd_per_year),
          insurance: yearly(finance?.insurance_usd_per_year),
          replacements: replacements.length === 0 ? say.text('replacements_none') : replacements.join(', '),
        }),
        say.text('assume_study', {
          years: say.number(payback.years),
          rate: say.percent(payback.discount_rate_pct, 1),
        }),
        say.text('assume_tree'),
      ],
    },
  ]
}

/** Stations that are named; the others are counted. */
const NAMED = 3

function weatherText({ climate: { name, sites } }: Offer['yield'], say: Offer['say']): string {
  if (sites.length < 2) return name
  const named = sites.slice(0, NAMED).map((site) => `${site.name} (${say.number(site.distance_km)} km)`)
  const count = sites.length - named.length
  const stations = named.join('; ')
  return say.text('weather_nearby', {
    stations: count === 0 ? stations : say.text('weather_more', { stations, count: say.number(count) }),
  })
}
