/**
 * Share of the rating of a dwelling service that its conductors have to carry, when they bring the whole load of one
 * dwelling.
 *
 * @source NEC 310.12(A) (2020, 2023 read), 310.15(B)(7) (2017 read; 2011 and 2014 secondary)
 */
export const DWELLING_SERVICE_SHARE = 0.83

/** Least rating of the service of a one-family dwelling, A. @source NEC 230.79(C): 2017 and 2023 read. */
export const LEAST_DWELLING_SERVICE_A = 100
