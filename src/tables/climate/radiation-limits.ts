import type { Source } from '../../worksheet/index.js'

/**
 * What hourly radiation of a weather file must keep to be believed. Limits of single hours are published for one-minute
 * means, which hourly means stay well inside; how many hours may fail, and the sums, are judgement.
 */
export const RADIATION_LIMITS = {
  source: {
    document: 'Long & Dutton 2002, BSRN recommended quality control tests',
    place: 'physically possible limits; diffuse ratio',
    standing: 'secondary',
  } satisfies Source as Source,
  /** Light with the sun lower than this all hour long is light at night, degrees below the horizon. */
  nightBelowDeg: 1,
  /** Less in an hour is an offset of an instrument, Wh/m2. */
  nightWhM2: 10,
  /** Share of the year's radiation at night: a clock wrong by an hour gives 0.4 %, by two 3 %, the sign of a US longitude 8 % and more. */
  nightShare: 0.05,
  /** Months with less sun above the air are not judged, Wh/m2 in the month. */
  sunnyMonthWhM2: 30_000,
  /** Global over the sun above the air: the months of 864 US sites have 0.20 and more. */
  leastClearness: 0.05,
  mostClearness: 0.85,
  /** Direct on the level and diffuse over global, a month; sound files stay within 0.03 of 1, measured ones within 0.1. */
  leastClosure: 0.75,
  mostClosure: 1.3,
  /** Hours with more global radiation are bright enough to compare diffuse with it, Wh/m2. */
  brightWhM2: 50,
  /** Diffuse over global of a low sun; 1.05 of a high one. */
  mostDiffuse: 1.1,
  /** Share of hours that fail a test: worth a warning, and not believed. */
  doubtfulShare: 0.05,
  refusedShare: 0.2,
} as const
