/**
 * Share of the rating of a dwelling service that its conductors have to carry, when they bring the whole load of one
 * dwelling.
 *
 * @source NEC 310.12(A) (2020, 2023 read), 310.15(B)(7) (2017 read; 2011 and 2014 secondary)
 */
export const DWELLING_SERVICE_SHARE = 0.83
