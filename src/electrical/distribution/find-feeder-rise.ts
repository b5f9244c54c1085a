import { impedanceOhmPerKft, powerFactorOf, twoWireRiseV } from '../voltage/index.js'
import { isAc, isSupplyTap, serviceOf, type CircuitValues, type Job } from '../system/index.js'
import { flowThroughFeeder } from './flows.js'
import { pathOfPv } from './judge-tree.js'
import { PV_SOURCE, type FeederNode, type TapNode, type Tree } from './tree.js'
import type { Percent } from '../../values/index.js'

/**
 * Voltage rise along the feeders and the tap between the PV system and the service, at the output of all sources that pass;
 * what the inverters see is that and the rise of their own circuits.
 *
 * @source NEC Chapter 9 Tables 8 and 9; 210.19, 215.2 informational notes
 */
export function findFeederRise(job: Job, tree: Tree, circuits: readonly CircuitValues[]): void {
  const way = new Set(pathOfPv(tree))
  const pieces = [
    ...tree.feeders
      .filter(({ id }) => way.has(id))
      .map((feeder) => recordRise(job, feeder, 'feeder', flowThroughFeeder(tree, feeder).currentA)),
    ...tree.taps
      .filter(({ id }) => way.has(id))
      .map((tap) => recordRise(job, tap, 'tap', tree.sources.find(({ id }) => id === PV_SOURCE)?.currentA ?? 0)),
  ]
  if (pieces.length === 0) return
  const feedersPct = pieces.reduce((sum, pct) => sum + pct, 0)
  for (const circuit of circuits) {
    if (!isAc(circuit) || isSupplyTap(circuit) || circuit.kind === 'ac_combined_output') continue
    const total = circuit.total_voltage_rise_pct + feedersPct
    if (total <= circuit.voltage_rise_limit_pct) continue
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.feeder-rise',
      message: `with ${feedersPct.toFixed(2)} % on the way from its panel to the service ${circuit.id} reaches ${total.toFixed(2)} %, ${circuit.voltage_rise_limit_pct} % is the limit`,
      where: 'electrical.distribution.feeders',
      source: job.nec('voltageDrop'),
      fix: 'Larger conductors for the circuits of the array or the feeder, fewer inverters, or a panel nearer to the service',
    })
    return
  }
}

/** Reactance and resistance as in steel unless the way is known to be without; that is the larger. */
const WITHOUT_STEEL = new Set(['PVC 40', 'PVC 80', 'LFNC', 'SE', 'NM', 'UF'])

function recordRise(job: Job, node: FeederNode | TapNode, kind: 'feeder' | 'tap', currentA: number): Percent {
  const { lineToLineV } = serviceOf(job)
  const { size, material, sets } = node.conductor
  const raceway = WITHOUT_STEEL.has(node.method ?? '') ? 'PVC 40' : 'EMT'
  const ohm = impedanceOhmPerKft({ size, material }, raceway, true, powerFactorOf(job)) / sets
  const riseV = twoWireRiseV(node.lengthFt, currentA, ohm)
  return job.worksheet.step({
    id: `wire.${kind}.${node.id}.rise`,
    says: `Voltage rise along ${kind} ${node.id} at the output of the sources that pass, ${size} ${material}`,
    formula: 'u = 100 x 2 x L x I x Z / 1000 / V',
    inputs: [
      { symbol: 'L', value: node.lengthFt, unit: 'ft', from: `${node.where}.length_ft` },
      { symbol: 'I', value: currentA, unit: 'A', from: 'rated output of the sources' },
      { symbol: 'Z', value: ohm, unit: 'ohm/kft', from: 'Chapter 9 Tables 8 and 9' },
      { symbol: 'V', value: lineToLineV, unit: 'V', from: 'electrical.service.voltage_v' },
    ],
    result: { symbol: 'u', value: (100 * riseV) / lineToLineV, unit: '%' },
    source: job.nec('acImpedance'),
  })
}
