import type { ConductorMaterial } from '../../tables/nec/index.js'
import { isCable, type ConductorCover, type RacewaySegment } from '../raceways/index.js'

/** A circuit in a segment, as far as it decides where its conductor is spliced. */
export interface Piece {
  readonly segment: RacewaySegment
  readonly circuit: { readonly id: string }
  readonly demand: { readonly material: ConductorMaterial }
  readonly insulation: ConductorCover
}

/** What makes two pieces parts of one conductor: metal and insulation, and the cable that it lies in. */
export const conductorKind = ({ segment, demand, insulation }: Omit<Piece, 'circuit'>): string =>
  [demand.material, insulation, isCable(segment.stated.raceway) ? segment.stated.raceway : ''].join(' ')

/**
 * Pieces of each conductor from splice to splice. A conductor is pulled whole through a run; it is spliced where a run
 * ends, where the next segment has another metal, insulation or cable, and behind a box that is stated with a splice.
 *
 * @param pieces Of all circuits, in the order of the way.
 */
export function wholeConductors<T extends Piece>(pieces: readonly T[]): T[][] {
  const open = new Map<string, { readonly kind: string; readonly whole: T[]; readonly ended: boolean }>()
  const wholes: T[][] = []
  for (const piece of pieces) {
    const way = `${piece.segment.run} ${piece.circuit.id}`
    const kind = conductorKind(piece)
    const before = open.get(way)
    const goesOn = before !== undefined && before.kind === kind && !before.ended
    const whole = goesOn ? before.whole : []
    if (!goesOn) wholes.push(whole)
    whole.push(piece)
    open.set(way, { kind, whole, ended: piece.segment.stated.box?.splice === true })
  }
  return wholes
}
