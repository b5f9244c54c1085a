import type { Source } from '../../worksheet/index.js'
import { LOSS_DEFAULTS } from '../losses/index.js'

/** A published value that is offered as a default. */
export interface PublishedRate {
  readonly value: number
  readonly unit: string
  readonly why: string
  readonly source: Source
}

const FEMP_2024: Source = { document: 'FEMP 2024 Discount Rates memorandum', edition: '2024-03-14', standing: 'read' }
const JUDGEMENT = (document: string): Source => ({ document, standing: 'common practice, no source' })

/** Defaults of the cash flow; the person can override every one. */
export const DEFAULT_RATES = {
  realDiscountPct: {
    value: 3,
    unit: '%/year',
    why: 'federal real discount rate (legal floor); no published rate for homeowners, so 0, 3 and 7 % are shown as well',
    source: FEMP_2024,
  },
  inflationPct: {
    value: 2.2,
    unit: '%/year',
    why: 'upper end of the inflation implied by the 2025 federal rates (2.1 to 2.2 %)',
    source: {
      document: 'OMB Circular A-94 Appendix C rates',
      edition: '2025',
      place: 'NIST data table 2025',
      standing: 'read',
    },
  },
  realEscalationPct: {
    value: 0,
    unit: '%/year',
    why: 'electricity follows inflation; published central values 2025 to 2050 run from -0.49 (New England) to +0.09 (Middle Atlantic), -0.12 for the US; retail prices have risen faster than inflation since 2022',
    source: {
      document: 'NIST energy price indices for life-cycle costing',
      edition: '2025',
      place: 'residential electricity, case REF',
      standing: 'read',
    },
  },
  studyYears: {
    value: 25,
    unit: 'years',
    why: 'a usual length of module power warranties',
    source: JUDGEMENT(''),
  },
  degradationPct: {
    value: LOSS_DEFAULTS.degradation_pct_per_year.stringPct,
    unit: '%/year',
    why: LOSS_DEFAULTS.degradation_pct_per_year.why,
    source: LOSS_DEFAULTS.degradation_pct_per_year.source,
  },
  yieldSigmaPct: {
    value: 8,
    unit: '%',
    why: 'combined long-term uncertainty near the 7.9 % of a published plant study',
    source: {
      document: 'Thevenard & Pelland, uncertainty of PV yield',
      place: 'lifetime average 7.9 %',
      standing: 'secondary',
    },
  },
  weatherSigmaPct: {
    value: 4,
    unit: '%',
    why: 'year-to-year spread near the 3.9 % of a published plant study',
    source: { document: 'Thevenard & Pelland, uncertainty of PV yield', place: 'climate 3.9 %', standing: 'secondary' },
  },
  escalationSigmaPct: {
    value: 1,
    unit: 'percentage points/year',
    why: 'so that the shown range of -1 to +2 % is roughly one to two standard deviations',
    source: JUDGEMENT(''),
  },
  costSigmaPct: {
    value: 5,
    unit: '%',
    why: 'estimate before a binding quote; state 0 for a quote',
    source: JUDGEMENT(''),
  },
} as const satisfies Record<string, PublishedRate>

/** Real discount rates at which the net present value is always shown, percent. */
export const SHOWN_DISCOUNT_PCT = [0, 3, 7] as const

/** Real escalation rates at which the sensitivity is shown, percent. */
export const SHOWN_ESCALATION_PCT = { low: -1, high: 2 } as const

/** Real escalation above which a warning is due, percent per year, beyond the range of the sensitivity. */
export const HIGH_ESCALATION_PCT = 3

/** Installed cost outside of which a warning is due, USD per W of DC rating. */
export const PLAUSIBLE_USD_PER_W = { low: 1.5, high: 6 } as const
