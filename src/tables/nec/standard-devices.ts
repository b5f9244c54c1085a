import type { Edition } from './editions.js'

/**
 * Standard ratings of fuses and circuit breakers, A.
 *
 * @source NEC 240.6(A) and Table 240.6(A) (2017 and 2023 read). The additional fuse ratings below 15 A are left out.
 */
export const standardDevices: readonly number[] = [
  15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500, 600,
]

/** Standard ratings above those, A; they may be stated, but are not chosen here. @source NEC 240.6(A), from memory. */
export const largerStandardDevices: readonly number[] = [700, 800, 1000, 1200]

/** Smaller standard ratings of breakers by edition, A. @source NEC 2023 Table 240.6(A), read; 2026 as 2023. */
export const smallerStandardDevices: Readonly<Partial<Record<Edition, readonly number[]>>> = {
  'NEC 2023': [10],
  'NEC 2026': [10],
}

/** Largest device for which the next standard size above the ampacity is allowed, A. @source NEC 240.4(B). */
export const NEXT_SIZE_UP_LIMIT_A = 800
