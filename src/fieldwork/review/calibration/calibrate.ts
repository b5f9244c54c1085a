import { CALIBRATION, REVIEW_THRESHOLDS } from '../../../tables/fieldwork/index.js'
import { normalBelow } from '../../../values/index.js'
import type { Worksheet } from '../../../worksheet/index.js'
import { WEATHER_TERMS, YEARLY_TERM, type YieldRun } from '../../../yield/index.js'
import type { Calibration } from '../review-values.js'
import type { FoundSign } from '../signs/sign.js'
import type { LastingSpread } from '../spread.js'
import { isFault, isSure } from '../tell-signs.js'
import { priorTerms, shareOfYear, type MeasuredDays } from './prior-terms.js'
import { recordCalibration, type MeasurementPart } from './record.js'
import { tellCalibration, tellRefused } from './tell.js'
import { updatedRange, updateTerms, type PriorTerm } from './update.js'

export interface CalibrationBasis extends MeasuredDays {
  readonly run: YieldRun
  readonly measuredKwh: number
  /** Of the sum of the days by their weather, or by how sure each is modelled, relative standard deviation. */
  readonly daySpread: number
  /** Of the comparison: all of the method, and weather that lasts longer than days. */
  readonly lasting: LastingSpread
  readonly signs: readonly FoundSign[]
}

/**
 * What the measured days say of the estimate of a mean year.
 *
 * @returns null, with a finding, when a sure fault is in the readings, or when the doubt of the estimate does not explain them.
 * @limits Small errors add up. Loss with age before and within the measured days is not taken off, so that old systems are told a little
 *   low. Errors other than snow are taken as the same share in every season; `season` stands for what that leaves out.
 */
export function calibrate(basis: CalibrationBasis, worksheet: Worksheet): Calibration | null {
  const { run, measuredKwh, expectedKwh, signs } = basis
  const priors = priorTerms(run, basis)
  const parts = measurementParts(basis, priors)
  const noise = Math.hypot(...parts.map(({ relative }) => relative))
  const deviation = expectedKwh > 0 ? measuredKwh / expectedKwh - 1 : 0
  const after = updateTerms(priors, deviation, noise)
  const percentile = 100 * normalBelow(deviation / Math.sqrt(after.variance + noise ** 2))
  const sure = signs.find(isSure)
  const { veryLowPercentile: edge } = REVIEW_THRESHOLDS
  if (sure !== undefined || expectedKwh <= 0 || percentile < edge || percentile > 100 - edge) {
    tellRefused(sure, { deviation, percentile }, worksheet)
    return null
  }
  const { exceedance, uncertainty } = run.result.values
  const before = { p50Kwh: exceedance.first_year.p50_kwh, p90Kwh: exceedance.first_year.p90_kwh }
  const yearly = (uncertainty.find(({ term }) => term === YEARLY_TERM)?.percent ?? 0) / 100
  const range = updatedRange(before, after, yearly)
  const values: Calibration = {
    factor: after.factor,
    prior_spread_pct: 100 * after.priorSpread,
    spread_pct: 100 * after.spread,
    measurement_pct: 100 * noise,
    terms: after.terms.map(({ term, prior, posterior, shift }) => ({
      term,
      prior_pct: 100 * prior,
      posterior_pct: 100 * posterior,
      shift_pct: 100 * shift,
    })),
    p50_kwh: range.p50Kwh,
    p90_kwh: range.p90Kwh,
    prior_p50_kwh: before.p50Kwh,
    prior_p90_kwh: before.p90Kwh,
  }
  recordCalibration({ values, after, parts, yearly, measuredKwh, expectedKwh, deviations: range.deviations }, worksheet)
  tellCalibration(
    values,
    signs.find((sign) => isFault(sign.kind)),
    worksheet,
  )
  return values
}

/** Why measured over expected would not be 1 if the estimate were exact. */
function measurementParts(basis: CalibrationBasis, priors: readonly PriorTerm[]): MeasurementPart[] {
  const { days, daySpread, lasting, isWeatherKnown } = basis
  const { meter, season } = CALIBRATION
  const shared = priors.filter(({ term }) => !WEATHER_TERMS.has(term)).reduce((sum, { prior }) => sum + prior ** 2, 0)
  return [
    {
      symbol: 's_d',
      relative: daySpread,
      from: isWeatherKnown
        ? 'days modelled with their own weather, each as unsure as the review takes it'
        : 'weather of the measured days, which hang together by production.day_correlation',
    },
    isWeatherKnown
      ? {
          symbol: 's_w',
          relative: Math.sqrt(Math.max(0, lasting.method ** 2 - shared)),
          from: 'the weather file, and the ways from its light to that of the modules, beyond what the estimate has too',
        }
      : {
          symbol: 's_w',
          relative: lasting.slowWeather,
          from: 'year to year of the estimate beyond what its days give; not made less by further years',
        },
    {
      symbol: 's_s',
      relative: season.relative * Math.max(0, 1 - shareOfYear(days)),
      from: `${100 * season.relative} % times the share of the year that was not measured: ${season.why} (${season.source.standing})`,
    },
    {
      symbol: 's_m',
      relative: meter.relative,
      from: `${meter.why}: ${meter.source.document} (${meter.source.standing})`,
    },
  ]
}
