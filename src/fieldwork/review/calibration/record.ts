import { BAYES_SOURCE } from '../../../tables/fieldwork/index.js'
import type { Source, Worksheet } from '../../../worksheet/index.js'
import type { Calibration } from '../review-values.js'
import type { Posterior } from './update.js'

/** A part of how unsure measured over expected is, relative standard deviation. */
export interface MeasurementPart {
  readonly symbol: string
  readonly relative: number
  readonly from: string
}

interface CalibrationRecord {
  readonly values: Calibration
  readonly after: Posterior
  readonly parts: readonly MeasurementPart[]
  readonly yearly: number
  readonly measuredKwh: number
  readonly expectedKwh: number
  /** Standard deviations from P50 to P90. */
  readonly deviations: number
}

const SQUARES: Source = { document: 'independent causes add up as squares', standing: 'common practice, no source' }

/** Puts the update down as a hand calculation. */
export function recordCalibration(record: CalibrationRecord, worksheet: Worksheet): void {
  recordMeasurement(record, worksheet)
  recordTerms(record, worksheet)
  recordRange(record, worksheet)
}

function recordMeasurement({ parts, values }: CalibrationRecord, worksheet: Worksheet): void {
  worksheet.step({
    id: 'output.calibration.measurement',
    says: 'Standard deviation of measured over expected energy if the estimate were exact',
    formula: `r = sqrt(${parts.map(({ symbol }) => `${symbol}^2`).join(' + ')})`,
    inputs: parts.map(({ symbol, relative, from }) => ({ symbol, value: 100 * relative, unit: '%', from })),
    result: { symbol: 'r', value: values.measurement_pct, unit: '%' },
    source: SQUARES,
  })
}

function recordTerms({ after, values, measuredKwh, expectedKwh }: CalibrationRecord, worksheet: Worksheet): void {
  const deviation = {
    symbol: 'd',
    value: 100 * (measuredKwh / expectedKwh - 1),
    unit: '%',
    from: 'M / E - 1 of the measured days',
  }
  const noise = { symbol: 'r', value: values.measurement_pct, unit: '%', from: 'above' }
  const variance = { symbol: 'V', value: after.variance, unit: '', from: 'sum over terms of (h s)^2' }
  const covariance = { symbol: 'C', value: after.covariance, unit: '', from: 'sum over terms of h s^2' }
  after.terms.forEach(({ term, prior, loading, posterior, shift }, at) => {
    const own = [
      { symbol: 's', value: 100 * prior, unit: '%', from: `values.uncertainty of the estimate: ${term}` },
      {
        symbol: 'h',
        value: loading,
        unit: '',
        from: 'what an error of 1 % of the year is in these days; 0 where they tell nothing of it',
      },
    ]
    worksheet.step({
      id: `output.calibration.shift.${at + 1}`,
      says: `Mean error of the estimate by the term '${term}' after the measured days`,
      formula: 'e = h s^2 d / (V + r^2)',
      inputs: [...own, deviation, variance, noise],
      result: { symbol: 'e', value: 100 * shift, unit: '%' },
      source: BAYES_SOURCE,
    })
    worksheet.step({
      id: `output.calibration.term.${at + 1}`,
      says: `Standard deviation of the term '${term}' after the measured days`,
      formula: "s' = s sqrt(1 - h^2 s^2 / (V + r^2))",
      inputs: [...own, variance, noise],
      result: { symbol: "s'", value: 100 * posterior, unit: '%' },
      source: BAYES_SOURCE,
    })
  })
  worksheet.step({
    id: 'output.calibration.factor',
    says: 'Energy of a mean year over that of the estimate after the measured days',
    formula: 'f = 1 + C d / (V + r^2)',
    inputs: [covariance, deviation, variance, noise],
    result: { symbol: 'f', value: values.factor, unit: '' },
    source: BAYES_SOURCE,
    limits:
      'a fault or a wrong meter in the same readings would be taken for an error of the estimate; loss with age is not taken off',
  })
  worksheet.step({
    id: 'output.calibration.spread',
    says: 'Standard deviation of all lasting terms together after the measured days, which tie them to each other',
    formula: 's_f = sqrt(s_0^2 - C^2 / (V + r^2))',
    inputs: [
      { symbol: 's_0', value: values.prior_spread_pct, unit: '%', from: 'lasting terms of the estimate, as squares' },
      covariance,
      variance,
      noise,
    ],
    result: { symbol: 's_f', value: values.spread_pct, unit: '%' },
    source: BAYES_SOURCE,
  })
}

function recordRange({ values, yearly, deviations }: CalibrationRecord, worksheet: Worksheet): void {
  const before = {
    symbol: 'P50_0',
    value: values.prior_p50_kwh,
    unit: 'kWh',
    from: 'values.exceedance.first_year of the estimate',
  }
  const ofYear = {
    symbol: 's_y',
    value: 100 * yearly,
    unit: '%',
    from: 'year to year of the estimate: no production makes it less',
  }
  worksheet.step({
    id: 'output.calibration.deviations',
    says: 'Standard deviations from P50 down to P90 of the estimate, 1.2816 if all causes were normal',
    formula: 'k = (1 - P90_0 / P50_0) / sqrt(s_0^2 + s_y^2)',
    inputs: [
      {
        symbol: 'P90_0',
        value: values.prior_p90_kwh,
        unit: 'kWh',
        from: 'values.exceedance.first_year of the estimate',
      },
      before,
      { symbol: 's_0', value: values.prior_spread_pct, unit: '%', from: 'lasting terms of the estimate, as squares' },
      ofYear,
    ],
    result: { symbol: 'k', value: deviations, unit: '' },
    source: SQUARES,
  })
  worksheet.step({
    id: 'output.calibration.p50',
    says: 'Energy of a first year after the measured days',
    formula: 'P50 = P50_0 f',
    inputs: [before, { symbol: 'f', value: values.factor, unit: '', from: 'above' }],
    result: { symbol: 'P50', value: values.p50_kwh, unit: 'kWh' },
    source: BAYES_SOURCE,
  })
  worksheet.step({
    id: 'output.calibration.p90',
    says: 'Energy of a first year that nine in ten exceed after the measured days',
    formula: 'P90 = P50_0 (f - k sqrt(s_f^2 + (f s_y)^2))',
    inputs: [
      before,
      { symbol: 'f', value: values.factor, unit: '', from: 'above' },
      { symbol: 'k', value: deviations, unit: '', from: 'above' },
      { symbol: 's_f', value: values.spread_pct, unit: '%', from: 'above' },
      ofYear,
    ],
    result: { symbol: 'P90', value: values.p90_kwh, unit: 'kWh' },
    source: SQUARES,
  })
}
