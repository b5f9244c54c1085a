import { LEAST_SERVICE_A } from '../../tables/nec/index.js'
import {
  SUPPLY_TAP,
  type Circuit,
  addPairs,
  highestLineA,
  pairCurrentsOf,
  practice,
  serviceOf,
  type Job,
  supplySideRule,
  twoWireEquivalentA,
} from '../system/index.js'
import { supplyTapMaterial } from '../raceways/index.js'

/**
 * The conductors of a supply-side connection: they carry all sources, and no device of the house protects them.
 *
 * Where several devices stand at their end, their ratings are added, which is on the safe side.
 *
 * @param ac AC circuits that end at the connection, and those before them.
 * @returns One circuit, or none on the load side.
 * @source NEC 705.60 (to 2017), 705.28 (2020, 2023), 230.42, 230.79(D), 230.90
 */
export function buildSupplyTap(job: Job, ac: readonly Circuit[]): Circuit[] {
  const { connection } = job.electrical
  if (connection?.kind !== 'supply_side') {
    findUnused(job)
    return []
  }
  const rule = supplySideRule(job.edition)
  const ending = endingAtConnection(ac)
  const sum = (of: (circuit: Circuit) => number): number => ending.reduce((total, circuit) => total + of(circuit), 0)
  const endDeviceA = sum((circuit) => circuit.deviceA ?? 0)
  const pairCurrentsA = addPairs(ending.map(pairCurrentsOf))
  const { lineToLineV, phases } = serviceOf(job)
  return [
    {
      id: SUPPLY_TAP,
      kind: 'ac_supply_tap',
      where: 'electrical.connection',
      voltageV: lineToLineV,
      continuousA: highestLineA(pairCurrentsA),
      operatingA: twoWireEquivalentA(pairCurrentsA),
      lines: phases === 3 ? 'ABC' : undefined,
      pairCurrentsA,
      deviceA: null,
      groundingDeviceA: endDeviceA,
      smallestDeviceA: endDeviceA,
      maxDeviceA: undefined,
      makerRisePct: undefined,
      inverterId: undefined,
      inverter: undefined,
      inverters: sum((circuit) => circuit.inverters),
      trunk: undefined,
      arrays: {},
      string: undefined,
      floor: {
        endDeviceA,
        leastA: LEAST_SERVICE_A,
        leastSize: supplyTapMaterial(job) === 'copper' ? rule.smallestCopper : rule.smallestAluminum,
      },
    },
  ]
}

/** Keys of a supply-side connection that a connection on the load side has no use for. */
const SUPPLY_SIDE_KEYS = ['conductor_size', 'conductor_material', 'overcurrent_device_distance_ft', 'tap'] as const

function findUnused(job: Job): void {
  const { connection } = job.electrical
  const stated = SUPPLY_SIDE_KEYS.filter((key) => connection?.[key] !== undefined)
  if (stated.length > 0)
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.supply-side-unused',
      message: `${stated.join(', ')} of the connection ${stated.length === 1 ? 'belongs' : 'belong'} to a supply-side connection and ${stated.length === 1 ? 'was' : 'were'} not used`,
      where: `electrical.connection.${stated[0]}`,
      source: practice(''),
      fix: 'State kind: supply_side, or take it out; the conductors to a breaker in the panel are sized in electrical.runs',
    })
}

/** The AC circuits that land at the point of connection: the combined output, or each source where none combines them. */
export function endingAtConnection(ac: readonly Circuit[]): Circuit[] {
  const combined = ac.filter((circuit) => circuit.kind === 'ac_combined_output')
  return combined.length > 0 ? combined : [...ac]
}
