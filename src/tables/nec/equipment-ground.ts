import type { ConductorSize } from './conductor-sizes.js'

/** Grounding conductor for an overcurrent device up to `toA`. */
export interface EquipmentGroundRow {
  readonly toA: number
  readonly copper: ConductorSize
  readonly aluminum: ConductorSize
}

/**
 * Smallest equipment grounding conductor by the overcurrent device ahead of it.
 *
 * @source NEC Table 250.122 (these rows the same 2008 to 2023).
 */
export const equipmentGround: readonly EquipmentGroundRow[] = [
  { toA: 15, copper: '14', aluminum: '12' },
  { toA: 20, copper: '12', aluminum: '10' },
  { toA: 60, copper: '10', aluminum: '8' },
  { toA: 100, copper: '8', aluminum: '6' },
  { toA: 200, copper: '6', aluminum: '4' },
  { toA: 300, copper: '4', aluminum: '2' },
  { toA: 400, copper: '3', aluminum: '1' },
]
