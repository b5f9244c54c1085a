import type { Source } from '../../worksheet/index.js'

export type RuleSet = 'utah' | 'nevada' | 'california' | 'rhode_island' | 'idaho' | 'florida' | 'other'

/** What a state asks of a written offer of residential solar, as far as it was read. */
export interface RuleSetFacts {
  /** Least size of type of the statement on cancelling, points. */
  readonly cancelPt: 10 | 12 | 16
  /** Least size of the rest, points. */
  readonly restPt: 10 | 12
  /** Largest assumed rise of electricity prices, percent a year, nominal. */
  readonly mostRisePct?: number
  /** Longest time over which savings may be told, years. */
  readonly mostYears?: number
  /** Largest deposit: the lesser of an amount and a share of the price. */
  readonly deposit?: { readonly usd: number; readonly sharePct: number }
  readonly source: Source
}

/** Largest sizes of type are kept where a rule was not read. */
export const RULE_SETS: Readonly<Record<RuleSet, RuleSetFacts>> = {
  utah: {
    cancelPt: 12,
    restPt: 12,
    mostRisePct: 3,
    mostYears: 20,
    source: {
      document: 'Utah Code 13-52-201 and following',
      edition: '2018',
      place: '201 to 203 in part',
      standing: 'read',
    },
  },
  nevada: {
    cancelPt: 16,
    restPt: 10,
    source: {
      document: 'Nevada NRS 598.9813 to 598.9815',
      edition: 'January 2025',
      place: 'first part',
      standing: 'read',
    },
  },
  california: {
    cancelPt: 16,
    restPt: 10,
    deposit: { usd: 1000, sharePct: 10 },
    source: {
      document: 'California BPC 7169 and 7159.5',
      place: '7159.5 from a law-reminder page',
      standing: 'secondary',
    },
  },
  rhode_island: {
    cancelPt: 12,
    restPt: 10,
    source: { document: 'Rhode Island GL 39-26.8-5', place: 'first part', standing: 'read' },
  },
  idaho: {
    cancelPt: 12,
    restPt: 10,
    source: { document: 'Idaho Code 48-1805', place: 'first part', standing: 'read' },
  },
  florida: {
    cancelPt: 12,
    restPt: 12,
    source: {
      document: 'Florida Statutes 520.20 to 520.26',
      edition: '2017',
      place: 'size of type',
      standing: 'from memory',
    },
  },
  other: {
    cancelPt: 12,
    restPt: 10,
    source: { document: '', standing: 'common practice, no source' },
  },
}

/** Right to cancel sales away from the seller's place of business, and the thresholds, USD. */
export const COOLING_OFF = {
  businessDays: 3,
  homeUsd: 25,
  temporaryPlaceUsd: 130,
  source: {
    document: '16 CFR 429, cooling-off rule',
    place: 'threshold of 130 USD from legal explainers',
    standing: 'secondary',
  },
} as const satisfies { readonly source: Source } & Record<string, unknown>

/** Business days in California for customers of 65 and older, and for repairs after a declared disaster. */
export const CALIFORNIA_DAYS = {
  older: 5,
  disaster: 7,
  source: {
    document: 'California home-improvement contracts',
    place: 'legislative digest and consumer page',
    standing: 'secondary',
  },
} as const satisfies { readonly source: Source } & Record<string, unknown>
