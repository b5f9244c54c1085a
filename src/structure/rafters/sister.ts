import { LUMBER_SIZES, type NominalSize } from '../../tables/nds/index.js'
import type { FramingSpec } from './framing-spec.js'
import type { CheckedRafter } from './rafter-check.js'
import { woodStrength } from './wood-strength.js'

/** Sizes from the shallowest up. */
const SIZES: readonly NominalSize[] = ['2x4', '2x6', '2x8', '2x10', '2x12']

/** A second rafter nailed to the first over its whole span. */
export interface Sister {
  readonly size: NominalSize
  /** Highest ratio of any check of the two together. */
  readonly ratio: number
}

/**
 * What rafters of the same and of the next size, of the same wood, nailed to a rafter from support to support would do.
 *
 * The two share the bending by their stiffness; shear and bearing stay with the first, as the second may end short of its seat.
 *
 * @source statics of two beams of one curvature; strengths by NDS 2018 (secondary)
 */
export function sistersOf(framing: FramingSpec, { checks }: CheckedRafter): Sister[] {
  const own = woodStrength(framing)
  if (own === undefined) return []
  const first = SIZES.indexOf(framing.nominalSize)
  return SIZES.slice(first, first + 2).flatMap((size) => {
    const other = woodStrength({ ...framing, nominalSize: size, ...LUMBER_SIZES[size] })
    if (other === undefined) return []
    const [stiff, stiffOther] = [own, other].map((wood) => wood.elasticityPsi * wood.momentOfInertiaIn4)
    const share = (stiff ?? 0) / ((stiff ?? 0) + (stiffOther ?? 0))
    const strong = (other.bendingPsi * other.sectionModulusIn3) / (own.bendingPsi * own.sectionModulusIn3)
    const ratios = checks.map(({ check, ratio }) => {
      if (check === 'deflection') return ratio * share
      return check === 'bending' ? ratio * Math.max(share, (1 - share) / strong) : ratio
    })
    return [{ size, ratio: Math.max(...ratios) }]
  })
}
