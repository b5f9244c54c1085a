/** Roof live load of a dwelling, psf. @source IRC 2018 table R301.6 (secondary) */
export const ROOF_LIVE_LOAD_PSF = 20

/** Live load need not be applied under modules with at most this clear space, in. @source IBC 2018 1607.12.5.1, ASCE 7-22 4.16.1 (secondary) */
export const NO_LIVE_LOAD_CLEARANCE_IN = 24

/** Gravity load of an element may grow by this much without a new check, percent. @source IEBC 2021 805.2 (secondary) */
export const GRAVITY_INCREASE_LIMIT_PCT = 5
