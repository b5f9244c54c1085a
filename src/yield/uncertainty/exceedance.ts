import { UNCERTAINTY } from '../../tables/losses/index.js'
import { quantile, type KilowattHours } from '../../values/index.js'
import type { Source, Worksheet } from '../../worksheet/index.js'
import { drawEnergies, type Draws } from './draws.js'
import { recordUncertainty } from './record.js'
import type { Exceedance, UncertaintyTermValue, YieldUncertainty } from './uncertainty-values.js'
import { AGE_TERM, termsOf, YEARLY_TERM, type Term, type UncertaintyBasis } from './terms.js'

/** Works out how sure the yearly yield is, from every cause of doubt, drawn together. */
export function yieldUncertainty(basis: UncertaintyBasis, worksheet: Worksheet): YieldUncertainty {
  const terms = termsOf(basis)
  const draws = drawEnergies(basis, terms, UNCERTAINTY.degradation.relative)
  const result: YieldUncertainty = {
    uncertainty: [
      ...terms.filter(hasEffect).map((term): UncertaintyTermValue => ({
        term: term.name,
        percent: 100 * ofSystem(basis, term),
        source: saySource(term.source),
        why: term.why,
        lasts: term.name !== YEARLY_TERM,
        shared: term.isShared ? 'system' : 'array',
      })),
      {
        term: AGE_TERM,
        percent: (100 * UNCERTAINTY.degradation.relative * (basis.life.years - 1)) / 2,
        source: saySource(UNCERTAINTY.degradation.source),
        why: `${UNCERTAINTY.degradation.why}; here over half of ${basis.life.years} years, and none in the first`,
        lasts: true,
        shared: 'system',
      },
    ],
    exceedance: {
      first_year: exceedance(draws.firstYear),
      any_year: exceedance(draws.anyYear),
      ten_year_mean: exceedance(draws.tenYearMean),
    },
    lifetime: {
      years: basis.life.years,
      ...exceedance(draws.life),
      degradation_pct_per_year: basis.ageing.pctPerYear,
    },
  }
  recordUncertainty(basis, result, worksheet)
  return result
}

function hasEffect({ relative }: Term): boolean {
  return relative.some((each) => each > 0)
}

/** Of the whole system: arrays with one draw add up as they are, others as squares. */
function ofSystem({ arrays }: UncertaintyBasis, { relative, isShared }: Term): number {
  const all = arrays.reduce((sum, { kwh }) => sum + kwh, 0)
  if (all <= 0) return 0
  const parts = arrays.map(({ kwh }, index) => (kwh / all) * (relative[index] ?? 0))
  return isShared ? parts.reduce((sum, part) => sum + part, 0) : Math.hypot(...parts)
}

function saySource({ document, edition, standing }: Source): string {
  const named = [document, edition].filter((part) => part !== undefined && part !== '').join(', ')
  return named === '' ? standing : `${named} (${standing})`
}

function exceedance(sorted: Draws[keyof Draws]): Exceedance {
  const at = (share: number): KilowattHours => quantile(sorted, share)
  return { p10_kwh: at(0.9), p50_kwh: at(0.5), p90_kwh: at(0.1), p99_kwh: at(0.01) }
}
