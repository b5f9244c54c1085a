import type { MonthlyClimate } from '../climate/index.js'
import { FLAGGED_SITE_SOURCE } from '../tables/climate/index.js'
import { EXCEEDANCE_Z, LOSS_DEFAULTS, UNCERTAINTY, type UncertaintyTerm } from '../tables/losses/index.js'
import type { Worksheet } from '../worksheet/index.js'
import { meanOutput } from './degradation.js'
import type { KilowattHours } from '../values/index.js'

/** Years of the long mean. */
const MEAN_YEARS = 10

/** Yearly yield that is exceeded in a share of cases, kWh. */
export interface Exceedance {
  readonly p50_kwh: number
  readonly p90_kwh: number
  readonly p99_kwh: number
}

export interface YieldUncertainty {
  readonly terms: readonly { readonly name: string; readonly relative_pct: number; readonly why: string }[]
  readonly single_year: Exceedance
  /** Mean of years 1 to 10, the loss of output with age included. */
  readonly ten_year_mean: Exceedance
  readonly degradation_pct_per_year: number
}

/** What the uncertainty of a yearly yield rests on. */
export interface UncertaintyBasis {
  /** Expected yearly yield, kWh. */
  readonly annualKwh: KilowattHours
  /** Which path the estimate took. */
  readonly method: 'monthly' | 'hourly'
  /**
   * Relative standard deviation of annual clearness among the sites used, and what nearer sites that were left out
   * would change.
   */
  readonly sites: Pick<MonthlyClimate, 'spreadRel' | 'leftOutRel'>
  /** Half the relative difference between the two published ways to find the cell temperature. */
  readonly temperatureSpread: number
  /** Share of the rated power on racks whose rows have no places, 0 to 1. */
  readonly rowShade: number
  /** Loss of output per year of age, and the path that states it. */
  readonly ageing: { readonly pctPerYear: number; readonly path: string }
}

interface NamedTerm {
  readonly name: string
  readonly term: UncertaintyTerm
}

/** How sure the yearly yield is: independent terms add up as squares. */
export function yieldUncertainty(basis: UncertaintyBasis, worksheet: Worksheet): YieldUncertainty {
  const { annualKwh, ageing } = basis
  const lasting = lastingTerms(basis)
  const yearly = UNCERTAINTY.yearToYear
  const lastingSquare = lasting.reduce((sum, { term }) => sum + term.relative ** 2, 0)
  const single = Math.sqrt(lastingSquare + yearly.relative ** 2)
  const tenYears = Math.sqrt(lastingSquare + yearly.relative ** 2 / MEAN_YEARS)
  recordSingleYear(basis, single, worksheet)
  recordNineInTen(annualKwh, single, worksheet)
  const meanKwh = recordMean(annualKwh, ageing, worksheet)
  return {
    terms: [...lasting, { name: 'year to year', term: yearly }]
      .filter(({ term }) => term.relative > 0)
      .map(({ name, term }) => ({ name, relative_pct: term.relative * 100, why: term.why })),
    single_year: exceedance(annualKwh, single),
    ten_year_mean: exceedance(meanKwh, tenYears),
    degradation_pct_per_year: ageing.pctPerYear,
  }
}

function methodTerm(method: UncertaintyBasis['method']): UncertaintyTerm {
  return method === 'monthly' ? UNCERTAINTY.monthlyMethod : UNCERTAINTY.hourlyMethod
}

/** Terms that are the same in every year, so that a mean over years does not lessen them. */
function lastingTerms({ method, sites, temperatureSpread, rowShade }: UncertaintyBasis): NamedTerm[] {
  const own = methodTerm(method)
  return [
    { name: `${method} method`, term: own },
    {
      name: 'spread of the climate sites',
      term: {
        relative: sites.spreadRel,
        why: 'standard deviation of annual clearness among the sites used',
        source: own.source,
      },
    },
    {
      name: 'climate site left out',
      term: {
        relative: sites.leftOutRel,
        why: 'change of the year if a nearer site that sticks out against its neighbours counted too',
        source: FLAGGED_SITE_SOURCE,
      },
    },
    {
      name: 'shade of row on row',
      term: { ...UNCERTAINTY.rowShade, relative: rowShade * UNCERTAINTY.rowShade.relative },
    },
    {
      name: 'cell temperature method',
      term: {
        relative: temperatureSpread,
        why: 'half the difference between coefficients by mounting and installed NOCT at this standoff',
        source: own.source,
      },
    },
  ]
}

function recordSingleYear(basis: UncertaintyBasis, single: number, worksheet: Worksheet): void {
  const { sites, rowShade, temperatureSpread } = basis
  const own = methodTerm(basis.method)
  const yearly = UNCERTAINTY.yearToYear
  worksheet.step({
    id: 'yield.uncertainty.single-year',
    says: 'Standard deviation of the yield of one year',
    formula: 's = sqrt(s_method^2 + s_sites^2 + s_left_out^2 + s_rows^2 + s_temperature^2 + s_year^2)',
    inputs: [
      { symbol: 's_method', value: own.relative * 100, unit: '%', from: own.why },
      { symbol: 's_sites', value: sites.spreadRel * 100, unit: '%', from: 'values.climate' },
      { symbol: 's_left_out', value: sites.leftOutRel * 100, unit: '%', from: 'climate sites left out' },
      {
        symbol: 's_rows',
        value: rowShade * UNCERTAINTY.rowShade.relative * 100,
        unit: '%',
        from: 'racks without places',
      },
      {
        symbol: 's_temperature',
        value: temperatureSpread * 100,
        unit: '%',
        from: 'installed NOCT against coefficients',
      },
      { symbol: 's_year', value: yearly.relative * 100, unit: '%', from: yearly.why },
    ],
    result: { symbol: 's', value: single * 100, unit: '%' },
    source: own.source,
  })
}

function recordNineInTen(annualKwh: KilowattHours, single: number, worksheet: Worksheet): void {
  worksheet.step({
    id: 'yield.uncertainty.p90',
    says: 'Yield of one year that nine years in ten exceed',
    formula: 'P90 = P50 (1 - 1.2816 s)',
    inputs: [
      { symbol: 'P50', value: annualKwh, unit: 'kWh', from: 'values.annual.ac_kwh' },
      { symbol: 's', value: single * 100, unit: '%', from: 'yield.uncertainty.single-year' },
    ],
    result: { symbol: 'P90', value: exceed(annualKwh, EXCEEDANCE_Z.p90, single), unit: 'kWh' },
    source: { document: 'normal distribution', place: 'one-sided 90 %', standing: 'read' },
  })
}

/** Mean yearly yield of the first years, kWh. */
function recordMean(annualKwh: KilowattHours, ageing: UncertaintyBasis['ageing'], worksheet: Worksheet): KilowattHours {
  return worksheet.step({
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

function exceedance(annualKwh: KilowattHours, relative: number): Exceedance {
  return {
    p50_kwh: annualKwh,
    p90_kwh: exceed(annualKwh, EXCEEDANCE_Z.p90, relative),
    p99_kwh: exceed(annualKwh, EXCEEDANCE_Z.p99, relative),
  }
}

function exceed(annualKwh: KilowattHours, z: number, relative: number): number {
  return annualKwh * Math.max(0, 1 - z * relative)
}
