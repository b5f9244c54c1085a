import type { Source } from '../../worksheet/index.js'

/** Levels at which the review of measured production speaks up. No standard sets them. */
export const REVIEW_THRESHOLDS = {
  /** Share of good systems that would be told that they are low, by luck alone. */
  lowPercentile: 10,
  veryLowPercentile: 2.5,
  /** A module below this share of its neighbours' median makes nothing. */
  deadModuleShare: 0.1,
  /** Days in a row up to the end after which a module counts as dead. */
  deadModuleDays: 3,
  /** A module below this share of what its place should give, against its neighbours, is weak. */
  weakModuleShare: 0.85,
  /** Weeks of clear-day envelope that a slope needs. */
  soilingWeeks: 6,
  /** Loss over these weeks, and chance of so clear a fall without any trend. */
  soilingLoss: 0.05,
  soilingChance: 0.01,
  /** A flat top: readings within this share of the highest, for this long, on so many days. */
  clippingFlatness: 0.003,
  clippingHours: 1.5,
  clippingIntervals: 4,
  clippingDays: 2,
  /** Shift of the centre of gravity of clear days, h; half of the commonest slip, one hour. */
  clockShiftH: 0.5,
  clockShiftDays: 5,
} as const

export const REVIEW_SOURCE: Source = { document: '', standing: 'common practice, no source' }
