/** Roof live load of a dwelling, psf. @source IRC 2018 table R301.6 (secondary) */
export const ROOF_LIVE_LOAD_PSF = 20

/** Gravity load of an element may grow by this much without a new check, percent. @source IEBC 2021 805.2 (secondary) */
export const GRAVITY_INCREASE_LIMIT_PCT = 5
