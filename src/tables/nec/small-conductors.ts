import type { ConductorSize } from './conductor-sizes.js'

/**
 * Largest overcurrent device for small conductors, A, whatever the tables say.
 *
 * @source NEC 240.4(D) (2017 items (3) to (7) and the 2023 list read).
 */
export const smallConductors: readonly {
  readonly size: ConductorSize
  readonly material: 'copper' | 'aluminum'
  readonly maxDeviceA: number
}[] = [
  { size: '14', material: 'copper', maxDeviceA: 15 },
  { size: '12', material: 'copper', maxDeviceA: 20 },
  { size: '10', material: 'copper', maxDeviceA: 30 },
  { size: '12', material: 'aluminum', maxDeviceA: 15 },
  { size: '10', material: 'aluminum', maxDeviceA: 25 },
]
