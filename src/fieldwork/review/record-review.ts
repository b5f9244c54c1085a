import { DAY_CORRELATION, REVIEW_DESIGN, REVIEW_DESIGN_SOURCE } from '../../tables/fieldwork/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { Projection, ReviewValues } from './review-values.js'

const BENDT = {
  document: 'Bendt, Collares-Pereira & Rabl, Solar Energy 27:1-5',
  edition: '1981',
  standing: 'secondary',
} as const
/** What the expected energy is, by what it rests on. */
const EXPECTED: Readonly<Record<ReviewValues['basis'], { readonly says: string; readonly formula: string }>> = {
  long_term_days: {
    says: 'Energy that the measured days give on the average of many years',
    formula: 'E = sum over days of the mean of ten kinds of day',
  },
  weather_of_these_hours: {
    says: 'Modelled energy of the measured days in their own weather',
    formula: 'E = sum over hours of modelled AC energy',
  },
  weather_of_some_days: {
    says: 'Energy of the measured days: modelled where their own weather is known, the average of many years for the others',
    formula: 'E = sum over hours of modelled AC energy + sum over the other days of the mean of ten kinds of day',
  },
}
const OWN = { document: 'sum of independent parts of knowledge', standing: 'common practice, no source' } as const

/** Puts the comparison down as a hand calculation. */
export function recordReview(
  values: ReviewValues,
  correlation: number,
  weatherName: string | undefined,
  worksheet: Worksheet,
): void {
  recordExpected(values, weatherName, worksheet)
  if (values.basis !== 'weather_of_these_hours') recordWeatherRange(values, correlation, worksheet)
  recordRange(values, worksheet)
  recordPercentile(values, worksheet)
  const { month, year } = values.projection
  recordProjection('month', month, worksheet)
  recordProjection('year', year, worksheet)
  recordPerformance(values, worksheet)
}

function recordExpected(values: ReviewValues, weatherName: string | undefined, worksheet: Worksheet): void {
  const { expected, period } = values
  const { says, formula } = EXPECTED[values.basis]
  worksheet.step({
    id: 'output.expected',
    says,
    formula,
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
      basis !== 'weather_of_these_hours'
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

function recordPerformance(values: ReviewValues, worksheet: Worksheet): void {
  const { to, expected_kwh: expected, as_is_kwh: asIs, mended_kwh: mended } = values.projection
  worksheet.step({
    id: 'output.performance',
    says: `Present output over what is expected of the same days, from ${values.performance_from} on; 80 % interval by weather ${values.performance_low_pct.toFixed(1)} to ${values.performance_high_pct.toFixed(1)} %`,
    formula: 'L = 100 M / E, over the days that no sign explains, or over those of a fault that lasts',
    inputs: [{ symbol: 'days', value: values.period.days_counted, unit: '', from: 'counted days' }],
    result: { symbol: 'L', value: values.performance_pct, unit: '%' },
    source: OWN,
    limits: 'a share of the estimate: how sure the estimate is comes on top',
  })
  worksheet.step({
    id: 'output.projection.as-is',
    says: `What the twelve months to ${to} will give when all stays as it is now`,
    formula: 'P_now = L E / 100',
    inputs: [
      { symbol: 'L', value: values.performance_pct, unit: '%', from: 'output.performance' },
      { symbol: 'E', value: expected, unit: 'kWh', from: 'the estimate over these days' },
    ],
    result: { symbol: 'P_now', value: asIs, unit: 'kWh' },
    source: OWN,
  })
  worksheet.step({
    id: 'output.projection.mended',
    says: 'What the same months will give when what is wrong is put right today',
    formula: 'P_mended = P_now + G',
    inputs: [
      { symbol: 'P_now', value: asIs, unit: 'kWh', from: 'output.projection.as-is' },
      {
        symbol: 'G',
        value: mended - asIs,
        unit: 'kWh',
        from: 'the level of days without a sign instead of the present one',
      },
    ],
    result: { symbol: 'P_mended', value: mended, unit: 'kWh' },
    source: OWN,
    limits: 'a system that was low from the first day counts as mended at the level of the estimate',
  })
  for (const [at, { kind, from, to, probability, lost_kwh: lost }] of values.signs.entries()) {
    worksheet.step({
      id: `output.sign.${at + 1}`,
      says: `Energy that the sign '${kind.replaceAll('_', ' ')}' of ${from} to ${to} has cost`,
      formula: 'what is expected of these days at the level of the others, less what they gave',
      inputs: [{ symbol: 'p', value: probability, unit: '', from: SIGN_CHANCE }],
      result: { symbol: 'loss', value: lost, unit: 'kWh' },
      source: REVIEW_DESIGN_SOURCE,
    })
  }
}

/** What the chance of a sign rests on. */
const SIGN_CHANCE = `chance of a fault: ${100 * REVIEW_DESIGN.faultsPerYear} % of systems a year have one (assumed) against the healthy simulated ones that show so strong a sign`
