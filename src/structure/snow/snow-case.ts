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

/** The largest snow of a case between two horizontal distances from the eave, psf; pieces that only touch do not count. */
export function mostSnowBetweenPsf(snow: SnowCase, fromFt: number, toFt: number): PoundsPerSquareFoot {
  const ends = snow.pieces.flatMap((piece) => {
    const [from, to] = [Math.max(piece.fromFt, fromFt), Math.min(piece.toFt, toFt)]
    if (to <= from + 1e-9) return []
    const alone: SnowCase = { ...snow, pieces: [piece] }
    return [snowAtPsf(alone, from), snowAtPsf(alone, to)]
  })
  return Math.max(0, ...ends)
}

/** The same snow all over a plane. */
export function evenSnow(name: string, depthFt: Feet, psf: PoundsPerSquareFoot): SnowCase {
  return { name, pieces: [{ fromFt: 0, toFt: depthFt, fromPsf: psf, toPsf: psf }] }
}

/** Snow that is heaped at one end of a plane: what lies all over, and what comes on top there. */
export interface HeapedSnow {
  readonly depthFt: Feet
  readonly basePsf: PoundsPerSquareFoot
  /** On top of the base at the end itself, and where the heap ends. */
  readonly atEndPsf: PoundsPerSquareFoot
  readonly atFootPsf: PoundsPerSquareFoot
  readonly widthFt: Feet
}

/** Heaped snow at the upper or lower end of a plane; a heap that is wider than the plane is cut off where the plane ends. */
export function heapedSnow(name: string, end: 'top' | 'eave', heap: HeapedSnow): SnowCase {
  const { depthFt, basePsf, atEndPsf, atFootPsf } = heap
  if (heap.widthFt <= 0) return evenSnow(name, depthFt, basePsf)
  const widthFt = Math.min(heap.widthFt, depthFt)
  const footPsf = basePsf + atEndPsf + (atFootPsf - atEndPsf) * (widthFt / heap.widthFt)
  const endPsf = basePsf + atEndPsf
  const rest = depthFt - widthFt
  const base = { fromPsf: basePsf, toPsf: basePsf }
  if (end === 'top') {
    const heaped = { fromFt: rest, toFt: depthFt, fromPsf: footPsf, toPsf: endPsf }
    return { name, pieces: rest > 0 ? [{ fromFt: 0, toFt: rest, ...base }, heaped] : [heaped] }
  }
  const heaped = { fromFt: 0, toFt: widthFt, fromPsf: endPsf, toPsf: footPsf }
  return { name, pieces: rest > 0 ? [heaped, { fromFt: widthFt, toFt: depthFt, ...base }] : [heaped] }
}

/** All pressures of a case times a factor. */
export function scaledSnow({ name, pieces }: SnowCase, factor: number): SnowCase {
  return {
    name,
    pieces: pieces.map((piece) => ({ ...piece, fromPsf: piece.fromPsf * factor, toPsf: piece.toPsf * factor })),
  }
}
