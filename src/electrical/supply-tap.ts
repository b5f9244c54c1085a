import type { ConductorMaterial } from '../tables/nec/index.js'
import { LEAST_SERVICE_A } from '../tables/nec/index.js'
import { SERVICE_VOLTAGE_V, type Circuit } from './circuit.js'
import { practice, type Job } from './job.js'
import { supplySideRule } from './judge-supply-side.js'
import type { RacewaySegment } from './resolve-runs.js'

/** Id of the circuit from the supply-side connection to its overcurrent device. */
export const SUPPLY_TAP = 'supply_tap'

/** Length that is taken when none is stated, ft. */
const USUAL_LENGTH_FT = 10

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
  const currentA = sum((circuit) => circuit.continuousA)
  return [
    {
      id: SUPPLY_TAP,
      kind: 'ac_supply_tap',
      where: 'electrical.connection',
      voltageV: SERVICE_VOLTAGE_V,
      continuousA: currentA,
      operatingA: currentA,
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
        leastSize: materialOf(job) === 'copper' ? rule.smallestCopper : rule.smallestAluminum,
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

/** The way of those conductors, with what is not stated as assumptions. */
export function supplyTapSegment(job: Job, tap: Circuit): RacewaySegment {
  const { connection } = job.electrical
  const stated = connection?.tap ?? {}
  const where = 'electrical.connection.tap'
  const assume = <T extends string>(key: string, value: T, why: string): T =>
    job.worksheet.assume({ path: `${where}.${key}`, value, unit: '', why, source: practice('') })
  const lengthFt =
    connection?.overcurrent_device_distance_ft ??
    job.worksheet.assume({
      path: 'electrical.connection.overcurrent_device_distance_ft',
      value: USUAL_LENGTH_FT,
      unit: 'ft',
      why: 'The longest that the editions with a limit allow in a dwelling; it counts for wire, voltage and straps only',
      source: job.nec('supplySide'),
    })
  return {
    id: `${SUPPLY_TAP}.to_device`,
    run: SUPPLY_TAP,
    where,
    sizeWhere: 'electrical.connection.conductor_size',
    lengthWhere: 'electrical.connection.overcurrent_device_distance_ft',
    stated: {
      ...stated,
      location:
        stated.location ??
        assume('location', 'outdoor_wall', 'Beside the meter on the outside wall, wet inside the raceway'),
      raceway: stated.raceway ?? assume('raceway', 'EMT', 'Metal raceway ahead of the first overcurrent device'),
      insulation: stated.insulation ?? assume('insulation', 'THWN-2', 'THWN-2, rated 90 deg C wet and dry'),
      material: materialOf(job),
      length_ft: lengthFt,
      ...(connection?.conductor_size === undefined ? {} : { size_awg: connection.conductor_size }),
    },
    circuits: [tap],
    // The neutral of a service goes to its disconnect, 250.24(C).
    neutral: true,
  }
}

function materialOf(job: Job): ConductorMaterial {
  return (
    job.electrical.connection?.conductor_material ??
    job.worksheet.assume({
      path: 'electrical.connection.conductor_material',
      value: 'copper' as const,
      unit: '',
      why: 'Copper where no metal is stated',
      source: practice(''),
    })
  )
}
