import type { StepInput } from '../worksheet/index.js'
import type { Percent } from '../values/index.js'
import type { WiringMethod } from '../tables/nec/index.js'
import { type Conductor, dcResistanceOhmPerKft, impedanceParts } from './conductors/index.js'
import { type Circuit, isAc, type Job } from './system/index.js'
import type { SizedSegment } from './segments/index.js'
import {
  impedanceOhmPerKft,
  invertersOnLongerHalf,
  powerFactorOf,
  racewayMetal,
  trunkEachA,
  trunkOhmPerKft,
} from './voltage/index.js'

/** Impedance and voltage rise of one circuit in one segment, with R, X, L and I, to be recomputed. */
export function recordSegmentRise(
  job: Job,
  circuit: Circuit,
  { segment: { id, stated, lengthWhere } }: SizedSegment,
  conductor: Conductor,
  risePct: Percent,
): void {
  const base = `wire.${id}.${circuit.id}`
  const z = impedanceOhmPerKft(conductor, stated.raceway, isAc(circuit), powerFactorOf(job))
  recordImpedance(job, circuit, stated.raceway, conductor, { base, z })
  job.worksheet.note({
    id: `${base}.rise`,
    says: `Voltage ${isAc(circuit) ? 'rise' : 'drop'} of ${circuit.id} in this piece: both conductors, one way L`,
    formula: 'rise = 2 x L x I x Z / 1000 / V',
    inputs: [
      { symbol: 'L', value: stated.length_ft, unit: 'ft', from: lengthWhere },
      { symbol: 'I', value: circuit.operatingA, unit: 'A', from: currentFrom(circuit) },
      { symbol: 'Z', value: z, unit: 'ohm/kft', from: `${base}.impedance` },
      { symbol: 'V', value: circuit.voltageV, unit: 'V', from: circuit.where },
    ],
    result: { symbol: 'rise', value: risePct, unit: '%' },
    source: job.nec(isAc(circuit) ? 'acImpedance' : 'dcResistance'),
  })
}

function recordImpedance(
  job: Job,
  circuit: Circuit,
  raceway: WiringMethod,
  conductor: Conductor,
  { base, z }: { readonly base: string; readonly z: number },
): void {
  const says = `Impedance of one ${conductor.size} ${conductor.material} conductor in ${raceway} at 75 deg C`
  const result = { symbol: 'Z', value: z, unit: 'ohm/kft' }
  if (!isAc(circuit)) {
    const r = dcResistanceOhmPerKft(conductor)
    const inputs = [{ symbol: 'R', value: r, unit: 'ohm/kft', from: 'Chapter 9 Table 8' }]
    job.worksheet.note({
      id: `${base}.impedance`,
      says,
      formula: 'Z = R',
      inputs,
      result,
      source: job.nec('dcResistance'),
    })
    return
  }
  const { resistance, reactance } = impedanceParts(conductor, racewayMetal(raceway))
  job.worksheet.note({
    id: `${base}.impedance`,
    says: `${says}; R is the larger of Table 9 and Table 8`,
    formula: 'Z = R x pf + X x sqrt(1 - pf^2)',
    inputs: [
      { symbol: 'R', value: resistance, unit: 'ohm/kft', from: 'Chapter 9 Table 9, not below Table 8' },
      { symbol: 'X', value: reactance, unit: 'ohm/kft', from: 'Chapter 9 Table 9' },
      { symbol: 'pf', value: powerFactorOf(job), unit: '', from: 'electrical.power_factor' },
    ],
    result,
    source: job.nec('acImpedance'),
  })
}

const currentFrom = (circuit: Circuit): string =>
  circuit.string === undefined
    ? `wire.${circuit.id}.current`
    : `equipment.modules.${circuit.string.moduleId}.imp_a, at maximum power`

/** Voltage rise along the trunk of a branch: the first piece carries all inverters, the last one. */
export function recordTrunkRise(job: Job, circuit: Circuit, risePct: Percent): void {
  const { id, trunk, where } = circuit
  if (trunk === undefined) return
  const onHalf = invertersOnLongerHalf(trunk.inverters, trunk.feed)
  job.worksheet.note({
    id: `wire.${id}.trunk-rise`,
    says: `Voltage rise along the trunk, fed at its ${trunk.feed}, conductors at 75 deg C: N pieces of L / N, of which the first carries N inverters of I and the last one`,
    formula: 'rise = 2 x L / N x I x R / 1000 x N x (N + 1) / 2 / V',
    inputs: [
      { symbol: 'N', value: onHalf, unit: '', from: where },
      { symbol: 'L', value: trunk.lengthFt, unit: 'ft', from: `${where}.trunk_length_ft` },
      { symbol: 'I', value: trunkEachA(circuit, onHalf), unit: 'A', from: 'one inverter' },
      { symbol: 'R', value: trunkOhmPerKft(trunk.cable), unit: 'ohm/kft', from: `equipment.trunk_cables.${trunk.id}` },
      { symbol: 'V', value: circuit.voltageV, unit: 'V', from: where },
    ],
    result: { symbol: 'rise', value: risePct, unit: '%' },
    source: job.nec('dcResistance'),
  })
}

/** The pieces of the rise of a circuit up to the connection, as terms of a sum. */
export function riseTerms(
  circuit: Circuit,
  segments: readonly { readonly id: string; readonly voltage_rise_pct: Percent }[],
  onward: readonly { readonly id: string; readonly risePct: Percent }[],
): { readonly formula: string; readonly inputs: readonly StepInput[] } {
  const trunk = `${circuit.id}.trunk`
  const own = segments.map(({ id, voltage_rise_pct: value }) => ({
    value,
    from: id === trunk ? `wire.${circuit.id}.trunk-rise` : `wire.${id}.${circuit.id}.rise`,
  }))
  const shared = onward.map(({ id, risePct }) => ({ value: risePct, from: `pieces of ${id}` }))
  const inputs = [...own, ...shared].map((term, index) => ({ symbol: `r_${index + 1}`, unit: '%', ...term }))
  return { formula: `total = ${inputs.map(({ symbol }) => symbol).join(' + ')}`, inputs }
}
