import {
  dcResistance,
  FAULT_CONDUCTOR_C,
  RESISTANCE_COEFFICIENT_PER_K,
  RESISTANCE_TEMPERATURE_C,
  type ConductorMaterial,
} from '../../tables/nec/index.js'
import type { Conductor } from '../conductors/index.js'

/**
 * Constant C of the point-to-point method from a resistance at 75 deg C: 1000 ft over the resistance of a cold conductor.
 *
 * Published constants of 1/0 AWG and larger count the reactance too and are smaller; without it the current comes out larger, which is
 * on the safe side.
 *
 * @param ohmPerKft At 75 deg C, ohm per 1000 ft.
 * @returns ft per ohm.
 * @source NEC Chapter 9 Table 8 note 2
 */
export function constantFromResistance(ohmPerKft: number, material: ConductorMaterial): number {
  const colder = RESISTANCE_TEMPERATURE_C - FAULT_CONDUCTOR_C
  return 1000 / (ohmPerKft * (1 - RESISTANCE_COEFFICIENT_PER_K[material] * colder))
}

/**
 * Constant C of a conductor; a solid one where it is made, whose resistance is less.
 *
 * @returns ft per ohm.
 * @source NEC Chapter 9 Table 8
 */
export function conductorConstant({ size, material }: Conductor): number {
  const least = Math.min(...dcResistance.filter((row) => row.size === size).map((row) => row[material]))
  return constantFromResistance(least, material)
}
