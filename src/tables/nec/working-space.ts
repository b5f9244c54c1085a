/** Depth of the working space, ft, by voltage to ground up to `toV`, for conditions 1, 2 and 3. */
export interface WorkingSpaceRow {
  readonly toV: number
  readonly conditionFt: readonly [number, number, number]
}

/**
 * Working space in front of equipment. Width: that of the equipment, at least 30 in; height 6.5 ft.
 *
 * @source NEC Table 110.26(A)(1).
 */
export const workingSpace: readonly WorkingSpaceRow[] = [
  { toV: 150, conditionFt: [3, 3, 3] },
  { toV: 600, conditionFt: [3, 3.5, 4] },
  { toV: 1000, conditionFt: [3, 4, 5] },
]

/** Least width of the working space, in. @source NEC 110.26(A)(2) */
export const WORKING_WIDTH_IN = 30
/** Least height of the working space, in: 6.5 ft. @source NEC 110.26(A)(3) */
export const WORKING_HEIGHT_IN = 78
