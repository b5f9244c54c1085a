import { EXCEEDANCE_Z, LOSS_DEFAULTS } from '../../tables/losses/index.js'
import type { Source, Worksheet } from '../../worksheet/index.js'
import { meanOutput } from '../degradation.js'
import { MEAN_YEARS } from './draws.js'
import { DRAWS } from './lattice.js'
import type { YieldUncertainty } from './uncertainty-values.js'
import { AGE_TERM, type UncertaintyBasis } from './terms.js'

const SQUARES: Source = { document: 'independent causes add up as squares', standing: 'common practice, no source' }
const DRAWN: Source = {
  document: 'stratified draws of all causes together, the same draws each time',
  standing: 'common practice, no source',
}

/** Puts on the worksheet what the uncertainty rests on, and a check by hand of the 90 % figure. */
export function recordUncertainty(
  { arrays, ageing }: UncertaintyBasis,
  { uncertainty, exceedance, lifetime }: YieldUncertainty,
  worksheet: Worksheet,
): void {
  const annualKwh = arrays.reduce((sum, { kwh }) => sum + kwh, 0)
  const inYear = uncertainty.filter(({ term }) => term !== AGE_TERM)
  const sigma = Math.hypot(...inYear.map(({ percent }) => percent))
  worksheet.step({
    id: 'yield.uncertainty.single-year',
    says: 'Standard deviation of the yield of one year, all causes taken as independent',
    formula: `s = sqrt(${inYear.map((_, index) => `s_${index + 1}^2`).join(' + ')})`,
    inputs: inYear.map(({ term, percent, why }, index) => ({
      symbol: `s_${index + 1}`,
      value: percent,
      unit: '%',
      from: `${term}: ${why}`,
    })),
    result: { symbol: 's', value: sigma, unit: '%' },
    source: SQUARES,
  })
  worksheet.step({
    id: 'yield.uncertainty.p90-by-hand',
    says: 'Yield of one year that nine years in ten exceed if all causes were normal: a check of the figure that is drawn',
    formula: 'P90 = P50 (1 - 1.2816 s)',
    inputs: [
      { symbol: 'P50', value: annualKwh, unit: 'kWh', from: 'values.annual.ac_kwh' },
      { symbol: 's', value: sigma, unit: '%', from: 'above' },
    ],
    result: { symbol: 'P90', value: annualKwh * Math.max(0, 1 - (EXCEEDANCE_Z.p90 * sigma) / 100), unit: 'kWh' },
    source: { document: 'normal distribution', place: 'one-sided 90 %', standing: 'read' },
  })
  worksheet.note({
    id: 'yield.uncertainty.drawn',
    says: `Energies that nine of ten draws exceed, of ${DRAWS} draws: losses cannot become gains, arrays share the weather`,
    formula: 'tenth of the draws from below, in order of size',
    inputs: [
      { symbol: 'first year', value: exceedance.first_year.p90_kwh, unit: 'kWh', from: 'values.exceedance' },
      { symbol: 'any year', value: exceedance.any_year.p90_kwh, unit: 'kWh', from: 'values.exceedance' },
      { symbol: 'ten years', value: exceedance.ten_year_mean.p90_kwh, unit: 'kWh a year', from: 'values.exceedance' },
    ],
    result: { symbol: `${lifetime.years} years`, value: lifetime.p90_kwh, unit: 'kWh' },
    source: DRAWN,
  })
  worksheet.step({
    id: 'yield.ten-year-mean',
    says: 'Mean yearly yield of years 1 to 10, losing output with age',
    formula: 'E_mean = E_1 (1/10) sum over t = 1..10 of (1 - d)^(t - 1)',
    inputs: [
      { symbol: 'E_1', value: annualKwh, unit: 'kWh', from: 'values.annual.ac_kwh' },
      { symbol: 'd', value: ageing.pctPerYear, unit: '%/year', from: ageing.path },
    ],
    result: { symbol: 'E_mean', value: annualKwh * meanOutput(ageing.pctPerYear / 100, MEAN_YEARS), unit: 'kWh' },
    source: LOSS_DEFAULTS.degradation_pct_per_year.source,
  })
}
