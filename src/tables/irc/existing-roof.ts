/** Greatest roof live load of a dwelling, psf. @source IRC 2018 table R301.6 (secondary) */
export const ROOF_LIVE_LOAD_PSF = 20

/**
 * Roof live load by slope: 20 psf up to 4 in rise a foot, less by 0.05 an inch above, never less than 0.6 of it.
 *
 * @source ASCE 7 4.8.2, Lr = 20 R1 R2 (secondary, three sources)
 */
export const ROOF_LIVE_LOAD = {
  greatestPsf: ROOF_LIVE_LOAD_PSF,
  fullToRise: 4,
  lessPerInch: 0.05,
  leastFrom: 0.6,
} as const

/** Roof live load of the residential code up to 200 ft2, by rise in a foot. @source IRC table R301.6 (secondary, partly from memory) */
export const ROOF_LIVE_STEPS = [
  { belowRise: 4, psf: 20 },
  { belowRise: 12, psf: 16 },
  { belowRise: Infinity, psf: 12 },
] as const

/** Gravity load of an element may grow by this much without a new check, percent. @source IEBC 2021 805.2 (secondary) */
export const GRAVITY_INCREASE_LIMIT_PCT = 5

/** Deflection limit span / n of rafters under the variable load alone. @source IRC table R301.7 (secondary) */
export const RAFTER_DEFLECTION = { steepOpen: 180, other: 240, plaster: 360, steepFromRise: 3 } as const

/** Wind for deflection as a share of components and cladding at allowable level. @source IRC table R301.7, note (secondary) */
export const DEFLECTION_WIND_SHARE = 0.7

/** Least bearing of a rafter on wood, in. @source IRC R802.6 (secondary) */
export const LEAST_SEAT_IN = 1.5

/** Slope below which a ridge has to be a beam, rise in a foot. @source IRC R802.4.4 (secondary, two) */
export const RIDGE_BOARD_FROM_RISE = 3

/**
 * What ties above the plate leave of a rafter's span, by their height over the height of the ridge.
 *
 * @source IRC table R802.4.1(9) (from memory)
 */
export const RAISED_TIES = [
  { upToShare: 1 / 7.5, spanFactor: 1 },
  { upToShare: 1 / 6, spanFactor: 0.9 },
  { upToShare: 1 / 5, spanFactor: 0.83 },
  { upToShare: 1 / 4, spanFactor: 0.76 },
  { upToShare: 1 / 3, spanFactor: 0.67 },
] as const
