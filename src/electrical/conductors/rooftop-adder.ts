import { rooftopAdderExempt, rooftopAdders, type Edition, type RooftopAdderRow } from '../../tables/nec/index.js'
import type { Inches } from '../../values/index.js'

/**
 * Temperature that sunlight adds to a raceway on or above a roof.
 *
 * @param heightIn Clear height from the roof to the bottom of the raceway, in, 0 or more.
 * @returns The row of the edition, whose `adderC` counts, or undefined when the insulation is exempt.
 * @source NEC 310.15(B)(2) (2020, 2023), 310.15(B)(3)(c) (2011 to 2017)
 */
export function rooftopAdderRow(edition: Edition, heightIn: Inches, insulation: string): RooftopAdderRow | undefined {
  if (rooftopAdderExempt[edition].includes(insulation)) return undefined
  return rooftopAdders.find(
    (row) => row.edition === edition && (row.inclusive ? heightIn <= row.toIn : heightIn < row.toIn),
  )
}
