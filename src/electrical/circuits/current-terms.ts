import type { Step } from '../../worksheet/index.js'
import { isAc, isShared, isStorage, isSupplyTap, type Circuit } from '../system/index.js'
import { endingAtConnection } from './supply-tap.js'

/** How the maximum current of a circuit comes about, to be recomputed: N inverters each, or the circuits that feed it. */
export function currentTerms(
  circuit: Circuit,
  circuits: readonly Circuit[],
): Partial<Pick<Step, 'formula' | 'inputs'>> {
  const { inverters, inverterId, continuousA, where } = circuit
  // Strings, their combiners and lines that share three phases are described where their kind is known.
  if (!isAc(circuit) || circuit.lines === 'ABC' || isStorage(circuit)) return {}
  if (isShared(circuit)) return sumOf(feeding(circuit, circuits))
  return {
    formula: 'I_max = N x I_out',
    inputs: [
      { symbol: 'N', value: inverters, unit: '', from: where },
      {
        symbol: 'I_out',
        value: continuousA / Math.max(1, inverters),
        unit: 'A',
        from: `equipment.inverters.${inverterId ?? ''}.ac_current_a`,
      },
    ],
  }
}

function feeding(circuit: Circuit, circuits: readonly Circuit[]): Circuit[] {
  const ac = circuits.filter((each) => isAc(each) && !isSupplyTap(each))
  return isSupplyTap(circuit) ? endingAtConnection(ac) : ac.filter((each) => !isShared(each))
}

function sumOf(sources: readonly Circuit[]): Pick<Step, 'formula' | 'inputs'> {
  return {
    formula: `I_max = ${sources.map((_, index) => `I_${index + 1}`).join(' + ')}`,
    inputs: sources.map(({ id, continuousA }, index) => ({
      symbol: `I_${index + 1}`,
      value: continuousA,
      unit: 'A',
      from: `wire.${id}.current`,
    })),
  }
}
