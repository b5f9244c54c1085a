import { MS_PER_DAY } from '../../values/index.js'
import type { ReviewValues } from '../../fieldwork/index.js'
import { calibrationSections } from './calibration-sections.js'
import type { Section } from '../../report/index.js'
import { signSection } from './sign-section.js'

/** What `review-output` prints. */
export function reviewSections(values: ReviewValues): Section[] {
  return [
    sumSection(values),
    ...signSection(values),
    presentSection(values),
    ...courseSection(values),
    { kind: 'table', heading: 'Month by month (counted days only)', ...monthTable(values) },
    projectionSection(values),
    ...calibrationSections(values),
    ...moduleSection(values),
  ]
}

const range = (low: number, high: number): string => `${low.toFixed(0)} to ${high.toFixed(0)}`

function sumSection(values: ReviewValues): Section {
  const { period, expected } = values
  const isAllKnown = values.basis === 'weather_of_these_hours'
  return {
    kind: 'facts',
    facts: [
      {
        label: 'Days compared',
        value: `${period.days_counted} (${period.from} to ${period.to}, ${period.days_missing} missing)`,
      },
      { label: 'Measured', value: { value: values.measured_kwh, tone: 'strong' }, unit: 'kWh', decimals: 1 },
      {
        label: isAllKnown ? 'Modelled for this weather' : 'Expected of such days',
        value: expected.mean_kwh,
        unit: 'kWh',
        decimals: 1,
      },
      { label: 'Measured over expected', value: 100 * values.measured_over_expected, unit: '%', decimals: 1 },
      ...(values.basis === 'weather_of_some_days'
        ? [{ label: 'Days with weather of their own', value: period.days_by_weather, decimals: 0 }]
        : []),
      ...(!isAllKnown
        ? [
            {
              label: '80 % range by weather luck alone',
              value: range(expected.weather_p10_kwh, expected.weather_p90_kwh),
              unit: 'kWh',
            },
          ]
        : []),
      {
        label: isAllKnown ? '80 % range of the method' : '80 % range with years and method',
        value: range(expected.p10_kwh, expected.p90_kwh),
        unit: 'kWh',
      },
      { label: 'Percentile of what was measured', value: values.percentile, decimals: 0 },
      ...(values.percentile_of_weather === null
        ? []
        : [{ label: 'Percentile by weather alone', value: values.percentile_of_weather, decimals: 0 }]),
    ],
  }
}

function presentSection(values: ReviewValues): Section {
  const { projection, degradation } = values
  const gained = projection.mended_kwh - projection.as_is_kwh
  const worth = projection.mending_worth_usd
  return {
    kind: 'facts',
    heading: 'At present',
    facts: [
      {
        label: `Output over expected, from ${values.performance_from} on`,
        value: values.performance_pct,
        unit: '%',
        decimals: 1,
      },
      {
        label: '80 % range of it by weather',
        value: range(values.performance_low_pct, values.performance_high_pct),
        unit: '%',
      },
      { label: `Twelve months to ${projection.to} as it is now`, value: projection.as_is_kwh, unit: 'kWh' },
      { label: 'The same months, mended today', value: projection.mended_kwh, unit: 'kWh' },
      ...(gained > 0.5 && worth !== null
        ? [{ label: 'Worth of mending in these months', value: worth, unit: 'USD' }]
        : []),
      ...(degradation === null
        ? []
        : [
            {
              label: 'Loss with age, by days a year apart',
              value: `${degradation.loss_pct_per_year.toFixed(1)} (95 %: ${degradation.low_pct_per_year.toFixed(1)} to ${degradation.high_pct_per_year.toFixed(1)})`,
              unit: '%/year',
            },
          ]),
      ...(values.not_looked_for.length === 0
        ? []
        : [{ label: 'This table cannot show', value: values.not_looked_for.join('; ') }]),
    ],
  }
}

function projectionSection({ projection }: ReviewValues): Section {
  return {
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
  }
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
