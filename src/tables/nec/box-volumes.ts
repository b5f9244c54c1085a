import type { Edition } from './editions.js'

/** Sizes of conductors that are counted by volume: AWG numbers, smallest first. */
export const boxConductorSizes = ['18', '16', '14', '12', '10', '8', '6'] as const

export type BoxConductorSize = (typeof boxConductorSizes)[number]

/**
 * Volume for each conductor in a box, in3.
 *
 * @source NEC Table 314.16(B); Table 314.16(B)(1) in 2023.
 */
export const boxAllowances: Readonly<Record<BoxConductorSize, number>> = {
  18: 1.5,
  16: 1.75,
  14: 2,
  12: 2.25,
  10: 2.5,
  8: 3,
  6: 5,
}

/** A metal box of the table: volume, in3, and how many equal conductors it takes when nothing else is in it. */
export interface BoxRow {
  /** `4 x 1-1/2 square`. */
  readonly id: string
  readonly volumeIn3: number
  /** In the order of `boxConductorSizes`. */
  readonly conductors: readonly [number, number, number, number, number, number, number]
}

const row = (id: string, volumeIn3: number, ...conductors: BoxRow['conductors']): BoxRow => ({
  id,
  volumeIn3,
  conductors,
})

/**
 * Metal boxes.
 *
 * @source NEC Table 314.16(A) (2017 and 2023 read). The first row prints 5 for 8 AWG in one copy of 2017; 12.5 / 3.0 gives 4.
 */
export const boxVolumes: readonly BoxRow[] = [
  row('4 x 1-1/4 round', 12.5, 8, 7, 6, 5, 5, 4, 2),
  row('4 x 1-1/2 round', 15.5, 10, 8, 7, 6, 6, 5, 3),
  row('4 x 2-1/8 round', 21.5, 14, 12, 10, 9, 8, 7, 4),
  row('4 x 1-1/4 square', 18, 12, 10, 9, 8, 7, 6, 3),
  row('4 x 1-1/2 square', 21, 14, 12, 10, 9, 8, 7, 4),
  row('4 x 2-1/8 square', 30.3, 20, 17, 15, 13, 12, 10, 6),
  row('4-11/16 x 1-1/4 square', 25.5, 17, 14, 12, 11, 10, 8, 5),
  row('4-11/16 x 1-1/2 square', 29.5, 19, 16, 14, 13, 11, 9, 5),
  row('4-11/16 x 2-1/8 square', 42, 28, 24, 21, 18, 16, 14, 8),
  row('3 x 2 x 1-1/2 device', 7.5, 5, 4, 3, 3, 3, 2, 1),
  row('3 x 2 x 2 device', 10, 6, 5, 5, 4, 4, 3, 2),
  row('3 x 2 x 2-1/4 device', 10.5, 7, 6, 5, 4, 4, 3, 2),
  row('3 x 2 x 2-1/2 device', 12.5, 8, 7, 6, 5, 5, 4, 2),
  row('3 x 2 x 2-3/4 device', 14, 9, 8, 7, 6, 5, 4, 2),
  row('3 x 2 x 3-1/2 device', 18, 12, 10, 9, 8, 7, 6, 3),
  row('4 x 2-1/8 x 1-1/2 device', 10.3, 6, 5, 5, 4, 4, 3, 2),
  row('4 x 2-1/8 x 1-7/8 device', 13, 8, 7, 6, 5, 5, 4, 2),
  row('4 x 2-1/8 x 2-1/8 device', 14.5, 9, 8, 7, 6, 5, 4, 2),
  row('3-3/4 x 2 x 2-1/2 masonry', 14, 9, 8, 7, 6, 5, 4, 2),
  row('3-3/4 x 2 x 3-1/2 masonry', 21, 14, 12, 10, 9, 8, 7, 4),
  row('FS 1-3/4 single', 13.5, 9, 7, 6, 6, 5, 4, 2),
  row('FD 2-3/8 single', 18, 12, 10, 9, 8, 7, 6, 3),
  row('FS 1-3/4 multiple', 18, 12, 10, 9, 8, 7, 6, 3),
  row('FD 2-3/8 multiple', 24, 16, 13, 12, 10, 9, 8, 4),
]

/**
 * How equipment grounding conductors count: one for all, or from a fifth on a quarter each.
 *
 * @source NEC 314.16(B)(5): 2017 read; 2020 and 2023 read; 2011 and 2014 as 2017.
 */
export const boxGrounds = (edition: Edition): BoxGrounds =>
  OLD_GROUNDS.has(edition) ? { forOne: Infinity, furtherShare: 0 } : { forOne: 4, furtherShare: 0.25 }

/** Up to how many grounding conductors count as one, and what each further one counts. */
export interface BoxGrounds {
  readonly forOne: number
  readonly furtherShare: number
}

const OLD_GROUNDS: ReadonlySet<Edition> = new Set(['NEC 2011', 'NEC 2014', 'NEC 2017'])

/**
 * Lengths of pull boxes in multiples of the largest trade size.
 *
 * @source NEC 314.28(A)
 */
export const PULL_BOX_FACTORS = { straight: 8, angle: 6, splice: 6 } as const

/** Cross-section of a conduit body over that of its largest raceway. @source NEC 314.16(C)(1) */
export const CONDUIT_BODY_FACTOR = 2
