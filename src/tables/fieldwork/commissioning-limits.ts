/** Limits of the tests before and after switching on; each is printed with its source from WORK_SOURCES. */
export const TEST_LIMITS = {
  /** Test current of the low-ohm meter, A, and resistance of bonding: usual, and aimed at beside the wire, ohm. */
  bondingTestA: 0.2,
  bondingUsualOhm: 1,
  bondingAimOhm: 0.1,
  /** Voltages and currents of like strings, share. */
  likeStrings: 0.05,
  /** After loss of the mains the inverter stops within, s; comes back after, s. */
  stopsWithinS: 2,
  returnsAfterS: 300,
  /** Energy check: light of at least, W/m2, steady for, min. */
  steadyWPerM2: 400,
  steadyMin: 10,
  /** A DC switch is not opened on a fault above, A. */
  faultOpenBelowA: 0.5,
} as const

/** Figures of safe work; each is printed with its source from WORK_SOURCES. */
export const SAFETY_FIGURES = {
  /** The foot of the ladder stands out by this share of its working length. */
  ladderFootShare: 0.25,
  ladderAboveEaveFt: 3,
  fallFromFt: 6,
  steepAboveIn12: 4,
  anchorLb: 5000,
  coverLoadFactor: 2,
  lineDistanceFt: 10,
  lineDistanceUpToKv: 50,
  windStopMph: 25,
  meterDcV: 1000,
} as const
