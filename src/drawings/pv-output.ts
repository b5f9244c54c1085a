import type { WiringValues } from '../electrical/index.js'
import type { Amperes } from '../values/index.js'

/** Rated output current of the PV system of this project, without other sources, A. */
export function pvOutputA({ circuits }: WiringValues): Amperes {
  return circuits
    .filter(({ kind }) => kind === 'ac_branch' || kind === 'ac_inverter_output')
    .reduce((sum, { continuous_a: currentA }) => sum + currentA, 0)
}
