import { LAG_GEOMETRY, LAG_SCREWS, SIDE_PLATES, type LagSize, type SidePlate } from '../../tables/nds/index.js'
import type { Inches, Pounds } from '../../values/index.js'

/** Rounds a bearing strength to the nearest 50 psi, as the tables do. */
const toFifty = (psi: number): number => Math.round(psi / 50) * 50

/**
 * Reference lateral design value of a lag screw through a steel plate into wood, single shear, lb.
 *
 * @param toGrain Load parallel to the grain (down the slope on a rafter) or across it.
 * @returns lb for a penetration of 8 diameters or more.
 * @source NDS 2018 table 12.3.1A with the root diameter, dowel bearing of table 12.3.3; reproduces table 12K
 * @limits The plate lies on the wood: no open gap, and steel as listed.
 */
export function lateralReferenceLb(
  specificGravity: number,
  size: LagSize,
  plate: SidePlate,
  toGrain: 'parallel' | 'perpendicular',
): Pounds {
  const { diameterIn, rootDiameterIn: D, bendingYieldPsi: Fyb } = LAG_SCREWS[size]
  const { thicknessIn: ls, bearingPsi: Fes } = SIDE_PLATES[plate]
  const Fem = toFifty(
    toGrain === 'parallel' ? 11200 * specificGravity : (6100 * specificGravity ** 1.45) / Math.sqrt(diameterIn),
  )
  const lm = LAG_GEOMETRY.fullLateralPenetration * diameterIn
  const Re = Fem / Fes
  const Rt = lm / ls
  const k1 = (Math.sqrt(Re + 2 * Re ** 2 * (1 + Rt + Rt ** 2) + Rt ** 2 * Re ** 3) - Re * (1 + Rt)) / (1 + Re)
  const k2 = -1 + Math.sqrt(2 * (1 + Re) + (2 * Fyb * (1 + 2 * Re) * D ** 2) / (3 * Fem * lm ** 2))
  const k3 = -1 + Math.sqrt((2 * (1 + Re)) / Re + (2 * Fyb * (2 + Re) * D ** 2) / (3 * Fem * ls ** 2))
  const R = reductions(D, toGrain === 'parallel' ? 1 : 1.25)
  return Math.min(
    (D * lm * Fem) / R.I, // Im
    (D * ls * Fes) / R.I, // Is
    (k1 * D * ls * Fes) / R.II, // II
    (k2 * D * lm * Fem) / ((1 + 2 * Re) * R.III), // IIIm
    (k3 * D * ls * Fem) / ((2 + Re) * R.III), // IIIs
    (D ** 2 / R.III) * Math.sqrt((2 * Fem * Fyb) / (3 * (1 + Re))), // IV
  )
}

/** Reduction terms Rd. @source NDS 2018 table 12.3.1B: K_theta = 1 + theta / 360 for D >= 1/4 in, K_D below */
function reductions(rootDiameterIn: Inches, angleFactor: number): { I: number; II: number; III: number } {
  if (rootDiameterIn >= 0.25) return { I: 4 * angleFactor, II: 3.6 * angleFactor, III: 3.2 * angleFactor }
  const KD = rootDiameterIn <= 0.17 ? 2.2 : 10 * rootDiameterIn + 0.5
  return { I: KD * angleFactor, II: KD * angleFactor, III: KD * angleFactor }
}

/**
 * Share of the lateral value that a shorter penetration keeps.
 *
 * @returns p / 8D between 4D and 8D, 1 from 8D, 0 below 4D.
 * @source NDS 2018 table 12K footnote 3 (secondary)
 */
export function penetrationShare(penetrationIn: Inches, size: LagSize): number {
  const diameters = penetrationIn / LAG_SCREWS[size].diameterIn
  if (diameters < LAG_GEOMETRY.leastPenetration) return 0
  return Math.min(1, diameters / LAG_GEOMETRY.fullLateralPenetration)
}
