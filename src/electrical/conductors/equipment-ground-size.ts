import { conductorSizes, equipmentGround, type ConductorSize } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import { circularMils } from './conductor-area.js'
import type { Amperes } from '../../values/index.js'

/**
 * Copper equipment grounding conductor by the overcurrent device.
 *
 * @param deviceA Device, A, or the one assumed by 690.9(B) where there is none.
 * @throws StageError above the rows of the table.
 * @source NEC Table 250.122
 */
export function equipmentGroundSize(deviceA: Amperes, where: string): ConductorSize {
  const row = equipmentGround.find((candidate) => deviceA <= candidate.toA)
  if (row === undefined)
    throw new StageError(
      where,
      `a device of ${deviceA} A is above the grounding table, which ends at ${equipmentGround.at(-1)?.toA} A`,
      'This tool is for small systems; ask an electrical engineer',
    )
  return row.copper
}

/**
 * Grounding conductor increased in proportion with the circuit conductors, and never larger than they are.
 *
 * @param ratio Area of the increased circuit conductors over that of the size which would do, 1 or more.
 * @param circuit Size of the circuit conductors.
 * @source NEC 250.122(A), 250.122(B)
 */
export function increasedGroundSize(base: ConductorSize, ratio: number, circuit: ConductorSize): ConductorSize {
  const areaCmil = circularMils(base) * Math.max(1, ratio)
  const grown = conductorSizes.find((size) => circularMils(size) >= areaCmil * (1 - 1e-9)) ?? circuit
  return smallerOf(grown, circuit)
}

export function largerOf(a: ConductorSize, b: ConductorSize): ConductorSize {
  return conductorSizes.indexOf(a) >= conductorSizes.indexOf(b) ? a : b
}

function smallerOf(a: ConductorSize, b: ConductorSize): ConductorSize {
  return largerOf(a, b) === a ? b : a
}
