import { conductorAreas, dcResistance, use2Areas, type ConductorSize, type Insulation } from '../../tables/nec/index.js'
import type { Inches, SquareInches } from '../../values/index.js'

/**
 * Cross-section of an insulated conductor over its insulation.
 *
 * @param diameterIn Outside diameter from the data sheet, in, which wins over the table.
 * @returns in2, or undefined when the table has no such wire and no diameter is stated.
 * @source NEC Chapter 9 Table 5 and notes 5 and 9
 */
export function conductorAreaIn2(
  size: ConductorSize,
  insulation: Insulation,
  diameterIn: Inches | undefined,
): SquareInches | undefined {
  if (diameterIn !== undefined) return (Math.PI / 4) * diameterIn ** 2
  const row = conductorAreas.find((candidate) => candidate.size === size)
  switch (insulation) {
    case 'THWN-2':
    case 'THHN':
      return row?.thwn2AreaIn2
    case 'XHHW-2':
      return row?.xhhw2AreaIn2
    case 'USE-2':
      return use2Areas.find((candidate) => candidate.size === size)?.areaIn2
    case 'PV wire':
    case 'USE':
      return undefined
  }
}

/** Cross-section of the metal, circular mils. @source NEC Chapter 9 Table 8 */
export function circularMils(size: ConductorSize): number {
  const row = dcResistance.find((candidate) => candidate.size === size)
  if (row === undefined) throw new Error(`no ${size} in Table 8`)
  return row.circularMils
}
