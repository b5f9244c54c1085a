/** Least height over the ground, ft, of overhead service conductors. */
export interface GroundClearance {
  readonly over: 'entrance' | 'lot' | 'driveway' | 'street'
  /** Up to this voltage to ground; undefined without a limit. */
  readonly toGroundUpToV: number | undefined
  /** Whether it holds only for conductors cabled with a grounded bare messenger. */
  readonly onlyMultiplex: boolean
  readonly leastFt: number
  readonly part: string
}

/**
 * Heights over the ground, the first row that fits.
 *
 * @source NEC 230.24(B), from memory
 */
export const groundClearances: readonly GroundClearance[] = [
  { over: 'entrance', toGroundUpToV: 150, onlyMultiplex: true, leastFt: 10, part: '(B)(1)' },
  { over: 'entrance', toGroundUpToV: 300, onlyMultiplex: false, leastFt: 12, part: '(B)(2)' },
  { over: 'entrance', toGroundUpToV: undefined, onlyMultiplex: false, leastFt: 15, part: '(B)(3)' },
  { over: 'lot', toGroundUpToV: 300, onlyMultiplex: false, leastFt: 12, part: '(B)(2)' },
  { over: 'lot', toGroundUpToV: undefined, onlyMultiplex: false, leastFt: 15, part: '(B)(3)' },
  { over: 'driveway', toGroundUpToV: 300, onlyMultiplex: false, leastFt: 12, part: '(B)(2)' },
  { over: 'driveway', toGroundUpToV: undefined, onlyMultiplex: false, leastFt: 15, part: '(B)(3)' },
  { over: 'street', toGroundUpToV: undefined, onlyMultiplex: false, leastFt: 18, part: '(B)(4)' },
]

/**
 * Clearances above roofs and their exceptions.
 *
 * @source NEC 230.24(A) with exceptions 2, 3 and 4, from memory
 */
export const roofClearance = {
  leastFt: 8,
  /** Kept this far beyond the edge in all directions. */
  beyondEdgeFt: 3,
  /** Steep roofs that nobody walks on, conductors up to a voltage between them. */
  steep: { leastFt: 3, fromIn12: 4, upToBetweenV: 300, part: '(A) Exception 2' },
  /** Short way over the overhang alone, to a mast or support that comes through it. */
  overhang: { leastFt: 1.5, conductorFt: 6, levelFt: 4, upToBetweenV: 300, part: '(A) Exception 3' },
  /** The last span to the side of a building need not keep the 3 ft beyond the edge. */
  wall: { part: '(A) Exception 4' },
} as const

/** Above this voltage between conductors article 230 up to 1000 V does not rule. */
export const OVERHEAD_RULED_UP_TO_V = 1000
