import type { CircuitValues, WiringValues } from './system/index.js'

/** Circuits of the PV system, then those of the storage. */
export const allCircuits = ({
  circuits,
  storage,
}: Pick<WiringValues, 'circuits' | 'storage'>): readonly CircuitValues[] =>
  storage === undefined ? circuits : [...circuits, ...storage.circuits]
