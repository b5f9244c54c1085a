import {
  addPairs,
  apparentPowerVa,
  type Circuit,
  isAc,
  isShared,
  type Job,
  lineCurrentsOf,
  pairCurrentsOf,
  serviceOf,
  unbalancePct,
  type WiringValues,
} from './system/index.js'

/** What all sources put on the lines of a 208 V service; nothing for a single-phase 120/240 V one. */
export function serviceValues(job: Job, circuits: readonly Circuit[]): Pick<WiringValues, 'service'> {
  const { lineToLineV, phases, wye } = serviceOf(job)
  if (!wye) return {}
  const pairs = addPairs(circuits.filter((circuit) => isAc(circuit) && !isShared(circuit)).map(pairCurrentsOf))
  return {
    service: {
      voltage_v: lineToLineV,
      phases,
      apparent_power_va: apparentPowerVa(pairs, lineToLineV),
      line_currents_a: lineCurrentsOf(pairs),
      unbalance_pct: phases === 1 ? null : unbalancePct(pairs),
    },
  }
}
