/** Sideways load of an existing building may grow by this much without a new check, percent. @source IEBC 2018 503.4 (read), a state's rule 1311.0806 (read) */
export const LATERAL_INCREASE_LIMIT_PCT = 10

/** Average dead load of roof and ceiling in D0 to D2 for prescriptive bracing, psf in plan. @source IRC 2018 R301.2.2 (from memory) */
export const PRESCRIPTIVE_ROOF_DEAD_PSF = 15
