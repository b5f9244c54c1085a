import { MS_PER_DAY } from '../../values/index.js'
import type { ReviewValues } from '../../fieldwork/index.js'
import type { Section } from '../../report/index.js'

/** What `review-output` prints. */
export function reviewSections(values: ReviewValues): Section[] {
  const { period, expected, projection } = values
  const range = (low: number, high: number): string => `${low.toFixed(0)} to ${high.toFixed(0)}`
  const isLongTerm = values.basis === 'long_term_days'
  return [
    {
      kind: 'facts',
      facts: [
        {
          label: 'Days compared',
          value: `${period.days_counted} (${period.from} to ${period.to}, ${period.days_missing} missing)`,
        },
        { label: 'Measured', value: { value: values.measured_kwh, tone: 'strong' }, unit: 'kWh', decimals: 1 },
        {
          label: isLongTerm ? 'Expected of such days' : 'Modelled for this weather',
          value: expected.mean_kwh,
          unit: 'kWh',
          decimals: 1,
        },
        { label: 'Measured over expected', value: 100 * values.measured_over_expected, unit: '%', decimals: 1 },
        ...(isLongTerm
          ? [
              {
                label: '80 % range by weather luck alone',
                value: range(expected.weather_p10_kwh, expected.weather_p90_kwh),
                unit: 'kWh',
              },
            ]
          : []),
        {
          label: isLongTerm ? '80 % range with years and method' : '80 % range of the method',
          value: range(expected.p10_kwh, expected.p90_kwh),
          unit: 'kWh',
        },
        { label: 'Percentile of what was measured', value: values.percentile, decimals: 0 },
        ...(values.percentile_of_weather === null
          ? []
          : [{ label: 'Percentile by weather alone', value: values.percentile_of_weather, decimals: 0 }]),
      ],
    },
    ...courseSection(values),
    { kind: 'table', heading: 'Month by month (counted days only)', ...monthTable(values) },
    {
      kind: 'table',
      heading: 'Projected: measured days as measured, the others as expected over many years',
      columns: [
        { heading: 'From' },
        { heading: 'To' },
        { heading: 'Measured', unit: 'kWh' },
        { heading: 'Days left' },
        { heading: 'Expected of them', unit: 'kWh' },
        { heading: 'Projected', unit: 'kWh' },
        { heading: '80 % range', unit: 'kWh', align: 'right' },
      ],
      rows: [projection.month, projection.year].map((each) => [
        each.from,
        each.to,
        each.measured_kwh,
        each.days_remaining,
        each.expected_rest_kwh,
        each.projected_kwh,
        range(each.p10_kwh, each.p90_kwh),
      ]),
    },
    ...moduleSection(values),
  ]
}

function courseSection({ cumulative }: ReviewValues): Section[] {
  const [first] = cumulative
  if (first === undefined || cumulative.length < 3) return []
  const start = Date.parse(first.date)
  const dayOf = (date: string): number => Math.round((Date.parse(date) - start) / MS_PER_DAY) + 1
  const series = (name: string, pick: (point: (typeof cumulative)[number]) => number) => ({
    name,
    points: cumulative.map((point) => [dayOf(point.date), pick(point)] as const),
  })
  return [
    {
      kind: 'plot',
      heading: 'Measured so far against the 80 % range',
      x: { label: `Day from ${first.date}` },
      y: { label: 'Energy', unit: 'kWh' },
      series: [
        series('measured', (point) => point.measured_kwh),
        series('expected', (point) => point.expected_kwh),
        series('high end', (point) => point.p90_kwh),
        series('low end', (point) => point.p10_kwh),
      ],
    },
  ]
}

/** Measured and expected energy by month. */
export function monthTable(values: ReviewValues) {
  return {
    columns: [
      { heading: 'Month' },
      { heading: 'Days' },
      { heading: 'Measured', unit: 'kWh', decimals: 1 },
      { heading: 'Expected', unit: 'kWh', decimals: 1 },
      { heading: 'Low end', unit: 'kWh', decimals: 1 },
      { heading: 'High end', unit: 'kWh', decimals: 1 },
      { heading: 'Percentile' },
    ],
    rows: values.months.map((month) => [
      month.month,
      month.days_counted,
      month.measured_kwh,
      month.mean_kwh,
      month.p10_kwh,
      month.p90_kwh,
      month.percentile,
    ]),
  }
}

function moduleSection({ modules }: ReviewValues): Section[] {
  if (modules.length === 0) return []
  return [
    {
      kind: 'table',
      heading: 'Modules against their neighbours',
      columns: [
        { heading: 'Module' },
        { heading: 'Measured', unit: 'kWh', decimals: 1 },
        { heading: 'Of what its place should give', unit: '%' },
        { heading: 'Nothing since' },
      ],
      rows: modules.map((module) => [module.id, module.measured_kwh, module.relative_pct, module.dead_since]),
    },
  ]
}
