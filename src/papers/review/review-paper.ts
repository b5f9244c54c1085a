import type { ReviewValues, Sign } from '../../fieldwork/index.js'
import type { PageBlock, Paper } from '../pages/index.js'

/** Kinds that may come of a ground or arc fault, of water, or of something that burns. */
const MAY_BE_DANGEROUS: ReadonlySet<Sign['kind']> = new Set([
  'outage',
  'trips',
  'string_or_inverter',
  'module',
  'level_drop',
])
/** What has room on one page. */
const MOST_SIGNS = 4
const MOST_MONTHS = 12

/** Signs in words for an owner. */
const WORDS: Readonly<Record<Sign['kind'], string>> = {
  outage: 'No output at all',
  snow: 'No or little output, perhaps under snow',
  string_or_inverter: 'Part of the system gave nothing',
  module: 'Single modules give too little',
  level_drop: 'Lower output than on the other days',
  low_level: 'Lower output from the first day on',
  shade: 'Shade at certain hours',
  soiling: 'Dirt',
  degradation: 'Ageing faster than stated',
  clipping: 'A power limit below the inverters',
  trips: 'The inverter stops and starts again in the sun',
  clock: 'The clock of the readings is off',
  daylight_saving: 'The clock of the readings follows daylight saving time',
  unit: 'The readings are in another unit',
  meter_reset: 'The meter was exchanged or reset',
}

/** What it should have made, what it made, and why: one page for the owner. Danger comes first. */
export function reviewPaper(title: string, values: ReviewValues): Paper {
  const { period, expected, measured_kwh: measured, projection } = values
  const gained = projection.mended_kwh - projection.as_is_kwh
  const worth = projection.mending_worth_usd
  const blocks: PageBlock[] = [
    ...(values.signs.some(({ kind }) => MAY_BE_DANGEROUS.has(kind)) ? [dangerBox()] : []),
    { kind: 'title', text: `What the system made: ${title}`, below: `${period.from} to ${period.to}` },
    {
      kind: 'facts',
      facts: [
        [
          'It made',
          `${measured.toFixed(0)} kWh on ${period.days_counted} days (${period.days_missing} days lack readings)`,
        ],
        [
          'It should have made',
          `${expected.mean_kwh.toFixed(0)} kWh; eight of ten good systems make ${expected.p10_kwh.toFixed(0)} to ${expected.p90_kwh.toFixed(0)} kWh`,
        ],
        [
          'Its output now',
          `${values.performance_pct.toFixed(0)} % of what is expected (by weather ${values.performance_low_pct.toFixed(0)} to ${values.performance_high_pct.toFixed(0)} %)`,
        ],
        [
          'The next twelve months',
          gained < 1
            ? `about ${projection.as_is_kwh.toFixed(0)} kWh`
            : `about ${projection.as_is_kwh.toFixed(0)} kWh as it is, ${projection.mended_kwh.toFixed(0)} kWh mended${worth === null ? '' : `: about ${worth.toFixed(0)} USD more`}`,
        ],
      ],
    },
    { kind: 'heading', text: 'Why' },
    ...whyBlocks(values),
    { kind: 'heading', text: 'Month by month' },
    monthBlock(values),
  ]
  return {
    title: `Production: ${title}`,
    language: 'en-US',
    author: '',
    subject: 'measured production against what these days should have given',
    date: period.to,
    blocks,
    foot: 'An estimate from long-term weather and the project file; not a bill, and no proof of a defect.',
    pageWords: (page, pages) => `page ${page} of ${pages}`,
  }
}

function dangerBox(): PageBlock {
  return {
    kind: 'box',
    tone: 'warning',
    title: 'First',
    lines: [
      'Smell of burning, smoke, noise, water in an enclosure, or an error of ground, insulation or arc: stop, do not climb, switch off at the labelled place, call an electrician.',
      'Do not switch on again what has tripped. Modules stay live while light falls on them.',
    ],
  }
}

function whyBlocks({ signs, not_looked_for: missed }: ReviewValues): PageBlock[] {
  if (signs.length === 0) {
    return [
      {
        kind: 'text',
        text: `No sign of a fault was found.${missed.length === 0 ? '' : ` These readings cannot show: ${missed.join('; ')}.`}`,
      },
    ]
  }
  const items = signs.slice(0, MOST_SIGNS).map((sign) => {
    const days = sign.from === sign.to ? sign.from : `${sign.from} to ${sign.to}${sign.lasts ? ', and it lasts' : ''}`
    const usd = sign.lost_usd === null ? '' : `, ${sign.lost_usd.toFixed(0)} USD`
    return `${WORDS[sign.kind]}, ${days} (${sign.where}; chance ${sign.probability > 0.99 ? 'above 99' : (100 * sign.probability).toFixed(0)} %, about ${sign.lost_kwh.toFixed(0)} kWh${usd}). To do: ${sign.look_at}.`
  })
  const more = signs.length - items.length
  return [{ kind: 'list', items: more > 0 ? [...items, `${more} more: see the full review.`] : items }]
}

function monthBlock({ months }: ReviewValues): PageBlock {
  return {
    kind: 'table',
    columns: [
      { heading: 'Month', share: 2, bold: true },
      { heading: 'Days', share: 1, align: 'right' },
      { heading: 'Made, kWh', share: 2, align: 'right' },
      { heading: 'Expected, kWh', share: 2, align: 'right' },
      { heading: 'Eight of ten, kWh', share: 3, align: 'right' },
    ],
    rows: months
      .slice(-MOST_MONTHS)
      .map((month) => [
        month.month,
        month.days_counted.toFixed(0),
        month.measured_kwh.toFixed(0),
        month.mean_kwh.toFixed(0),
        `${month.p10_kwh.toFixed(0)} to ${month.p90_kwh.toFixed(0)}`,
      ]),
  }
}
