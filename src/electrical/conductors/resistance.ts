import { acImpedance, dcResistance } from '../../tables/nec/index.js'
import type { Conductor } from './base-ampacity.js'

export type RacewayMetal = 'pvc' | 'steel'

/**
 * Direct-current resistance of a stranded, uncoated conductor at 75 deg C.
 *
 * @returns ohm per 1000 ft.
 * @source NEC Chapter 9 Table 8
 */
export function dcResistanceOhmPerKft({ size, material }: Conductor): number {
  const row = dcResistance.find((candidate) => candidate.size === size && candidate.strands > 1)
  if (row === undefined) throw new Error(`no stranded ${size} in Table 8`)
  return row[material]
}

/**
 * Effective impedance of one conductor at 75 deg C: R cos(phi) + X sin(phi).
 *
 * Table 9 prints R with two digits, so the larger of it and the direct-current resistance of Table 8 is taken.
 *
 * @param powerFactor 0.5 to 1.
 * @returns ohm per 1000 ft.
 * @source NEC Chapter 9 Table 9 note 2, Table 8
 */
export function effectiveImpedanceOhmPerKft(conductor: Conductor, raceway: RacewayMetal, powerFactor: number): number {
  const { resistance, reactance } = impedanceParts(conductor, raceway)
  return resistance * powerFactor + reactance * Math.sqrt(1 - powerFactor ** 2)
}

/** Resistance and reactance that enter the effective impedance, ohm per 1000 ft. */
export function impedanceParts(
  conductor: Conductor,
  raceway: RacewayMetal,
): { readonly resistance: number; readonly reactance: number } {
  const row = acImpedance.find((candidate) => candidate.size === conductor.size)
  const table = conductor.material === 'copper' ? row?.copperResistance : row?.aluminumResistance
  const steel = raceway === 'steel'
  return {
    resistance: Math.max(dcResistanceOhmPerKft(conductor), table?.[steel ? 2 : 0] ?? 0),
    reactance: row?.reactance[steel ? 1 : 0] ?? 0,
  }
}
