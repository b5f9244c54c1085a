/**
 * Standard ratings of fuses and circuit breakers, A.
 *
 * @source NEC 240.6(A) and Table 240.6(A) (2017 and 2023 read). The additional fuse ratings below 15 A are left out.
 */
export const standardDevices: readonly number[] = [
  15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500, 600,
]

/** Largest device for which the next standard size above the ampacity is allowed, A. @source NEC 240.4(B). */
export const NEXT_SIZE_UP_LIMIT_A = 800
