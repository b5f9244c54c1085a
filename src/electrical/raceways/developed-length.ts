import { inchesOf, type Inches } from '../../values/index.js'
import type { StatedSegment } from './raceway-segment.js'

/**
 * Length between boxes of each segment of a run, in: a conduit body is no box, so the pieces before and behind it count
 * together. A nipple must be short between boxes, cabinets or enclosures; that a conduit body parts it is not agreed.
 *
 * @source NEC Chapter 9 Table 1 note 4
 */
export function developedLengthsIn(pieces: readonly StatedSegment[]): Inches[] {
  const groups: StatedSegment[][] = []
  pieces.forEach((piece, i) => {
    const joined = i > 0 && pieces[i - 1]?.box?.kind === 'conduit_body'
    const group = joined ? groups.at(-1) : undefined
    if (group === undefined) groups.push([piece])
    else group.push(piece)
  })
  return groups.flatMap((group) => {
    const lengthIn = group.reduce((sum, { length_ft: lengthFt }) => sum + inchesOf(lengthFt), 0)
    return group.map(() => lengthIn)
  })
}
