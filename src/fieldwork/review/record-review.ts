import { DAY_CORRELATION } from '../../tables/fieldwork/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { Projection, ReviewValues } from './review-values.js'

const BENDT = {
  document: 'Bendt, Collares-Pereira & Rabl, Solar Energy 27:1-5',
  edition: '1981',
  standing: 'secondary',
} as const
const OWN = { document: 'sum of independent parts of knowledge', standing: 'common practice, no source' } as const

/** Puts the comparison down as a hand calculation. */
export function recordReview(
  values: ReviewValues,
  correlation: number,
  weatherName: string | undefined,
  worksheet: Worksheet,
): void {
  recordExpected(values, weatherName, worksheet)
  if (values.basis === 'long_term_days') recordWeatherRange(values, correlation, worksheet)
  recordRange(values, worksheet)
  recordPercentile(values, worksheet)
  for (const [name, part] of Object.entries(values.projection)) recordProjection(name, part, worksheet)
}

function recordExpected(values: ReviewValues, weatherName: string | undefined, worksheet: Worksheet): void {
  const { expected, period } = values
  const isLongTerm = values.basis === 'long_term_days'
  worksheet.step({
    id: 'output.expected',
    says: isLongTerm
      ? 'Energy that the measured days give on the average of many years'
      : 'Modelled energy of the measured days in their own weather',
    formula: isLongTerm
      ? 'E = sum over days of the mean of ten kinds of day'
      : 'E = sum over hours of modelled AC energy',
    inputs: [
      {
        symbol: 'days',
        value: period.days_counted,
        unit: '',
        from: `${period.from} to ${period.to}, ${period.days_missing} missing`,
      },
      ...(weatherName === undefined ? [] : [{ symbol: 'weather', value: weatherName, unit: '', from: '--weather' }]),
    ],
    result: { symbol: 'E', value: expected.mean_kwh, unit: 'kWh' },
    source: BENDT,
  })
}

function recordWeatherRange({ expected }: ReviewValues, correlation: number, worksheet: Worksheet): void {
  worksheet.step({
    id: 'output.weather-range',
    says: 'Energy that nine in ten draws of the weather exceed, the estimate taken as exact',
    formula:
      'distribution of the sum: day by day, kind by kind, each kind following the other with the chance that r gives',
    inputs: [{ symbol: 'r', value: correlation, unit: '', from: 'production.day_correlation' }],
    result: { symbol: 'W10', value: expected.weather_p10_kwh, unit: 'kWh' },
    source: DAY_CORRELATION.source,
    limits: 'each month has its long-term distribution; ten kinds leave out the very dullest and very clearest days',
  })
}

function recordRange({ expected, basis }: ReviewValues, worksheet: Worksheet): void {
  worksheet.step({
    id: 'output.range',
    says: 'Energy that nine good systems in ten exceed: weather of days and years, and how sure the estimate is',
    formula:
      basis === 'long_term_days'
        ? 'P(sum x (1 + s z) < P10) = 0.10, s = sqrt(s_m^2 + s_w^2)'
        : 'P10 = E (1 - 1.2816 s_m)',
    inputs: [
      {
        symbol: 's_m',
        value: expected.method_uncertainty_pct,
        unit: '%',
        from: 'uncertainty of the estimate without year to year',
      },
      {
        symbol: 's_w',
        value: expected.slow_weather_pct,
        unit: '%',
        from: 'year to year of the estimate beyond what its days give',
      },
    ],
    result: { symbol: 'P10', value: expected.p10_kwh, unit: 'kWh' },
    source: OWN,
    limits: 's_m is of a year; a single month of the estimate is less sure',
  })
}

function recordPercentile(values: ReviewValues, worksheet: Worksheet): void {
  worksheet.step({
    id: 'output.percentile',
    says: 'Share of good systems that would have given less in these days',
    formula: 'percentile = 100 P(sum x (1 + s z) < M)',
    inputs: [{ symbol: 'M', value: values.measured_kwh, unit: 'kWh', from: 'the table of measured production' }],
    result: { symbol: 'percentile', value: values.percentile, unit: '%' },
    source: OWN,
  })
}

function recordProjection(name: string, part: Projection, worksheet: Worksheet): void {
  worksheet.step({
    id: `output.projection.${name}`,
    says: `What ${part.from} to ${part.to} will have given: measured days as measured, the others as expected over many years`,
    formula: 'P = M + E_rest',
    inputs: [
      { symbol: 'M', value: part.measured_kwh, unit: 'kWh', from: `${part.days_measured} measured days` },
      { symbol: 'E_rest', value: part.expected_rest_kwh, unit: 'kWh', from: `${part.days_remaining} other days` },
    ],
    result: { symbol: 'P', value: part.projected_kwh, unit: 'kWh' },
    source: OWN,
    limits: 'a good or bad stretch is not carried on',
  })
}
