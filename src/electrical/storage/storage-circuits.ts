import { CONTINUOUS_FACTOR } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import type { Amperes } from '../../values/index.js'
import { nextStandardDeviceA, positive, serviceOf, USUAL_SERVICE_V, type Circuit, type Job } from '../system/index.js'
import { batteryCurrent } from './battery-side.js'
import { storageLanding } from './storage-landing.js'
import { storageOf, storageRulesOf, type StorageSystem } from './storage-unit.js'

/** Id of the AC circuit of the storage, and of its source in the installation. */
export const STORAGE_SOURCE = 'storage'

/** Id of the DC circuit between battery and inverter. */
export const STORAGE_DC = 'storage_dc'

/**
 * Circuits of the storage: from its units to their panel, and from battery to inverter where that is wired on site. Units
 * that share a circuit are added; charging and discharging use one circuit, which is sized for the larger current.
 *
 * @returns Nothing without storage.
 * @throws StageError when a rated current is missing, or for an edition or a service that is not covered.
 * @source NEC 706.20 and 706.21, 2017 read; 706.30 and 706.31 since 2020: secondary
 */
export function buildStorageCircuits(job: Job): Circuit[] {
  const system = storageOf(job)
  if (system === undefined) return []
  storageRulesOf(job)
  const service = serviceOf(job)
  if (service.lineToLineV !== USUAL_SERVICE_V || service.phases !== 1)
    throw new StageError(
      'storage',
      `storage on a service of ${service.lineToLineV} V is not covered; single-phase 120/240 V is`,
      'Ask an electrical engineer, or state count: 0 to plan without it',
    )
  return [...acCircuits(job, system), ...dcCircuits(system)]
}

function acCircuits(job: Job, system: StorageSystem): Circuit[] {
  const { unit, unitId, unitWhere, count, stated } = system
  // A DC-coupled battery leaves through the inverter of the modules, whose circuit is there already.
  if (unit.coupling === 'dc') return []
  if (unit.ac_voltage_v !== USUAL_SERVICE_V)
    throw new StageError(
      `${unitWhere}.ac_voltage_v`,
      unit.ac_voltage_v === undefined
        ? 'the AC voltage of the storage unit is not stated'
        : `a storage unit of ${unit.ac_voltage_v} V is not covered; ${USUAL_SERVICE_V} V is`,
      'State the voltage of the data sheet; a 120 V unit on one line needs an electrical engineer',
    )
  if (unit.rated_output_a === undefined)
    throw new StageError(
      `${unitWhere}.rated_output_a`,
      'the rated continuous output current of the storage unit is not stated',
      'It stands on the nameplate and the data sheet; it is not reckoned from the power',
    )
  const charges = (unit.rated_input_a ?? 0) > unit.rated_output_a
  const eachA = positive(Math.max(unit.rated_output_a, unit.rated_input_a ?? 0), unitWhere, 'the current')
  const key = charges ? 'rated_input_a' : 'rated_output_a'
  const { installation } = stated
  const landing = storageLanding(job, system)
  const groups = unitsByCircuit(count, installation?.units_per_circuit ?? count)
  return groups.map((units, i) =>
    circuitOf({
      id: groups.length === 1 ? STORAGE_SOURCE : `${STORAGE_SOURCE}_${i + 1}`,
      kind: 'ac_storage',
      voltageV: USUAL_SERVICE_V,
      statedA: installation?.breaker_a,
      maxDeviceA: unit.max_ocpd_a,
      storage: { unitId, units, eachA, eachFrom: `${unitWhere}.${key}`, landing },
    }),
  )
}

function dcCircuits(system: StorageSystem): Circuit[] {
  const battery = batteryCurrent(system)
  if (battery === undefined) return []
  const { unit, unitId, unitWhere, count, stated } = system
  const voltageV = unit.battery_side?.low_voltage_v
  if (voltageV === undefined)
    throw new StageError(
      `${unitWhere}.battery_side.low_voltage_v`,
      'the lowest battery voltage is not stated, so the voltage drop of its circuit cannot be reckoned',
      'It stands on the data sheet of the inverter as the lowest input voltage at rated power',
    )
  return Array.from({ length: count }, (_, i) =>
    circuitOf({
      id: count === 1 ? STORAGE_DC : `${STORAGE_DC}_${i + 1}`,
      kind: 'dc_storage',
      voltageV,
      statedA: stated.installation?.battery_breaker_a,
      maxDeviceA: undefined,
      storage: { unitId, units: 1, eachA: battery.eachA, eachFrom: battery.from, landing: undefined },
    }),
  )
}

/** Units on each circuit: full circuits first, the rest on the last. */
export function unitsByCircuit(count: number, perCircuit: number): number[] {
  const full = Math.floor(count / perCircuit)
  const rest = count - full * perCircuit
  return [...Array.from({ length: full }, () => perCircuit), ...(rest > 0 ? [rest] : [])]
}

interface Parts extends Pick<Circuit, 'id' | 'kind' | 'voltageV' | 'maxDeviceA'> {
  readonly statedA: Amperes | undefined
  readonly storage: NonNullable<Circuit['storage']>
}

/** The device is the next standard one from 125 percent of the sum on, or a larger one that is stated. */
function circuitOf({ statedA, storage, ...parts }: Parts): Circuit {
  const where = 'storage.installation'
  const continuousA = storage.units * storage.eachA
  const smallestDeviceA = nextStandardDeviceA(CONTINUOUS_FACTOR * continuousA, where)
  const deviceA = Math.max(statedA ?? 0, smallestDeviceA)
  return {
    ...parts,
    where,
    continuousA,
    operatingA: continuousA,
    deviceA,
    groundingDeviceA: deviceA,
    smallestDeviceA,
    makerRisePct: undefined,
    inverterId: undefined,
    inverter: undefined,
    inverters: 1,
    trunk: undefined,
    arrays: {},
    string: undefined,
    storage,
  }
}
