import type { Feet, PoundsPerSquareFoot } from '../../values/index.js'

/** Snow on one part of a plane; the pressure goes straight from one end to the other. */
export interface SnowPiece {
  /** Horizontal distances from the plane's lowest eave, ft. */
  readonly fromFt: Feet
  readonly toFt: Feet
  /** On the horizontal, at the level of the ground snow that the person stated. */
  readonly fromPsf: PoundsPerSquareFoot
  readonly toPsf: PoundsPerSquareFoot
}

/** One way that snow may lie on a plane, on the covering of the roof (no credit for sliding off glass). */
export interface SnowCase {
  readonly name: string
  /** From the eave up, without gaps over the depth of the plane. */
  readonly pieces: readonly SnowPiece[]
}

/** Snow of a case at a horizontal distance from the eave, psf; the larger one where two pieces meet. */
export function snowAtPsf({ pieces }: SnowCase, atFt: number): PoundsPerSquareFoot {
  let psf = 0
  for (const { fromFt, toFt, fromPsf, toPsf } of pieces) {
    if (atFt < fromFt - 1e-9 || atFt > toFt + 1e-9) continue
    const share = toFt > fromFt ? (atFt - fromFt) / (toFt - fromFt) : 0
    psf = Math.max(psf, fromPsf + share * (toPsf - fromPsf))
  }
  return psf
}

/** The largest snow of a case, psf. */
export function mostSnowPsf({ pieces }: SnowCase): PoundsPerSquareFoot {
  return Math.max(0, ...pieces.flatMap(({ fromPsf, toPsf }) => [fromPsf, toPsf]))
}
