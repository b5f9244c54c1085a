import type { LoadCombination } from '../../tables/asce7/index.js'
import type { Inches, Pounds, PoundsPerSquareFoot, SquareFeet } from '../../values/index.js'
import type { PlaneGeometry } from '../model/index.js'
import type { SnowCase } from '../snow/index.js'
import type { FramingSpec } from './framing-spec.js'

/** What a mount brings to a rafter. */
export interface RafterPoint {
  /** Rafter number, 1 at the left. */
  readonly rafter: number
  /** Up the slope, in plane coordinates, in. */
  readonly yIn: number
  /** Dead load of the array: all of it, and what surely holds against uplift; vertical. */
  readonly deadLb: Pounds
  readonly leastDeadLb: Pounds
  /** Surface that the rail gives to the mount; snow on it goes to the rafter. */
  readonly areaFt2: SquareFeet
  /** Wind at right angles to the roof at strength level, both as sizes. */
  readonly windDownLb: Pounds
  readonly windUpLb: Pounds
}

/** A stretch of the slope, in from the eave line in plane coordinates. */
export interface Stretch {
  readonly fromIn: Inches
  readonly toIn: Inches
}

/** Everything that the rafters of one plane carry. */
export interface RafterInput {
  readonly framing: FramingSpec
  readonly plane: PlaneGeometry
  readonly points: readonly RafterPoint[]
  /** Parts of the slope that modules cover over a rafter. */
  readonly coveredIn: (rafter: number) => readonly Stretch[]
  /** Roof live load on the horizontal, psf. */
  readonly livePsf: PoundsPerSquareFoot
  /** Whether live load is left out under the modules. */
  readonly liveLeftOut: boolean
  /** Snow on the covering at the level of the ground snow that is stated. */
  readonly snow: readonly SnowCase[]
  readonly combinations: readonly LoadCombination[]
  /** Wind on the bare roof at a place of a rafter, psf at strength level, as a size. */
  readonly bareWindPsf: (
    place: { readonly xIn: number; readonly yIn: number },
    areaFt2: SquareFeet,
    direction: 'uplift' | 'down',
  ) => PoundsPerSquareFoot
}
