import { isAc, isShared, type Circuit } from './circuit.js'

/**
 * Circuits that the power of one passes after it, up to the point of connection or to the inverter.
 *
 * @param circuits All, in the order of the way: what is shared comes after what shares it.
 */
export function onwardOf(circuit: Circuit, circuits: readonly Circuit[]): Circuit[] {
  if (isAc(circuit)) return circuits.slice(circuits.indexOf(circuit) + 1).filter(isShared)
  return circuits.filter(({ combiner }) => combiner?.strings.some(({ id }) => id === circuit.id) === true)
}
