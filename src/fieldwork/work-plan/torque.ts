import { poundFeetOf, type PoundInches } from '../../values/index.js'

/**
 * What to tighten a fastener to: the number of the equipment file, or room to write down the maker's.
 *
 * @param what What is tightened: `clamps`.
 * @param lbIn Torque from the data sheet, lb-in; undefined when the file has none.
 */
export function torqueText(what: string, lbIn: PoundInches | undefined): string {
  if (lbIn === undefined) {
    return `torque of ${what}: as the maker states; write it here: ______ (the equipment file has none)`
  }
  return `torque of ${what}: ${lbIn} lb-in (${poundFeetOf(lbIn).toFixed(1)} lb-ft)`
}
