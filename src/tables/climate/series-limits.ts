import type { Source } from '../../worksheet/index.js'

/**
 * What each interval of a weather series must keep. S is the extraterrestrial irradiance at right angles to the sun, m the
 * cosine of the zenith angle: global and diffuse stay within `factor` S m^1.2 + `offset`, W/m2. The limits are published
 * for means of one minute; longer means stay further inside.
 */
export const SERIES_LIMITS = {
  source: {
    document: 'Long & Dutton 2002, BSRN recommended quality control tests; Long & Shi 2008, Open Atmos. Sci. J. 2:23',
    place: 'physically possible and extremely rare limits, closure, diffuse ratio',
    standing: 'secondary',
  } satisfies Source as Source,
  exponent: 1.2,
  possible: {
    least: -4,
    ghi: { factor: 1.5, offset: 100 },
    dhi: { factor: 0.95, offset: 50 },
    /** Direct: at most S. */
    dniFactor: 1,
  },
  rare: {
    ghi: { factor: 1.2, offset: 50 },
    dhi: { factor: 0.75, offset: 30 },
    /** Direct: 0.95 S m^0.2 + 10. */
    dni: { factor: 0.95, exponent: 0.2, offset: 10 },
  },
  /** Global over direct on the level and diffuse, where these two exceed `leastWM2`; a high sun stands above 15 deg. */
  closure: { leastWM2: 50, highSun: 0.08, lowSun: 0.15 },
  diffuseRatio: { leastWM2: 50, highSun: 1.05, lowSun: 1.1 },
  /** Cosine of 75 deg, beyond which the sun counts as low. */
  highSunCosZenith: 0.2588,
  /** Light with the sun below this altitude, deg, and above this strength, W/m2, is a wrong clock or zone. */
  night: { belowDeg: -1, leastWM2: 10 },
  /** The same value by day for so long is a stuck sensor, h. */
  stuckH: 3,
  /** Thermal offset of a pyranometer at night: negative values down to here are usual, W/m2. */
  thermalOffsetWM2: -30,
  /** Share of the daylight that fails: worth a warning, and refused (judgement). */
  doubtfulShare: 0.05,
  refusedShare: 0.2,
} as const

/** How gaps are closed, and from where on they are not (common practice, no source). */
export const GAP_LIMITS = {
  source: {
    document:
      'clearness and diffuse share interpolated over short gaps, days like the neighbouring days over longer ones',
    standing: 'common practice, no source',
  } satisfies Source as Source,
  interpolatedH: 2,
  neighbourDaysH: 72,
  temperatureH: 6,
} as const

/** What splitting global radiation by a correlation adds to a year (judgement from the comparison named). */
export const DECOMPOSITION = {
  source: {
    document: 'Erbs, Klein & Duffie 1982, Solar Energy 28:293',
    place:
      'against measured direct and diffuse at Golden CO and Saint-Pierre, La Reunion, 76 days: plane bias up to 2.5 %, steep 5 %',
    standing: 'secondary',
  } satisfies Source as Source,
  southRel: 0.02,
  otherRel: 0.04,
} as const

/** Sums of a file against the nearest station of the built-in table. */
export const SUM_LIMITS = {
  source: {
    document:
      'typical years of 1,020 US stations: single years differ by 3 to 5 %, months of a typical year by 10 % rms',
    standing: 'secondary',
  } satisfies Source as Source,
  /** Stations further away say nothing, km. */
  reachKm: 150,
  yearRel: 0.25,
  refusedRel: 0.7,
  /** Of fewer months than these single ones may be so dull that only a slip of two and more is told from weather. Our own judgement. */
  fewMonths: 6,
  refusedFewRel: 1,
  monthRel: 0.15,
} as const
