import type { WiringValues } from '../electrical/index.js'
import type { Amperes } from '../values/index.js'

/** Rated output current of the PV system of this project, without other sources, A; on three lines that of the fullest. */
export function pvOutputA({ circuits, service }: WiringValues): Amperes {
  if (service !== undefined) return Math.max(...Object.values(service.line_currents_a))
  return circuits
    .filter(({ kind }) => kind === 'ac_branch' || kind === 'ac_inverter_output')
    .reduce((sum, { continuous_a: currentA }) => sum + currentA, 0)
}
