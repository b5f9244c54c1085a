import { SHORT_CIRCUIT_FACTOR, ARC_FAULT_FROM_V, groundingRules } from '../../tables/nec/index.js'
import { own, type Amperes, type Volts } from '../../values/index.js'
import type { ArrayOfModules } from '../../project/index.js'
import { type Circuit, inverterById, isAc, type Job, ratedIsc, type StringValues } from '../system/index.js'

/** Arc-fault and ground-fault protection and the DC disconnect of every inverter that has DC circuits. */
export function checkDcProtection(job: Job, circuits: readonly Circuit[], strings: readonly StringValues[]): void {
  for (const [inverterId, voltageV] of highestVoltages(job, circuits, strings)) {
    checkArcFault(job, inverterId, voltageV)
    checkGroundFault(job, inverterId, voltageV, circuits)
    checkDcDisconnect(job, inverterId, circuits)
  }
}

/** Highest cold voltage of every inverter, by inverter id. */
function highestVoltages(
  job: Job,
  circuits: readonly Circuit[],
  strings: readonly StringValues[],
): ReadonlyMap<string, number> {
  const highest = new Map<string, number>()
  for (const { id, voc_cold_v: voltageV } of strings) {
    const unit = circuits.find((circuit) => circuit.id === id)?.string?.unit
    const inverterId =
      unit === undefined ? own(job.project.arrays, id)?.inverter : own(job.project.inverter_units, unit)?.inverter
    if (inverterId !== undefined) highest.set(inverterId, Math.max(voltageV, highest.get(inverterId) ?? 0))
  }
  return highest
}

function checkArcFault(job: Job, inverterId: string, voltageV: Volts): void {
  const where = `equipment.inverters.${inverterId}.dc_afci`
  if (voltageV < ARC_FAULT_FROM_V) return
  const stated = inverterById(job, inverterId, where).dc_afci
  if (stated === true) return
  job.worksheet.find({
    severity: stated === false ? 'error' : 'warning',
    id: 'wire.arc-fault',
    message: `${voltageV.toFixed(0)} V DC is at or above ${ARC_FAULT_FROM_V} V and asks for a listed DC arc-fault interrupter; inverter ${inverterId} ${stated === false ? 'has none' : 'does not say whether it has one'}`,
    where,
    source: job.nec('afciDc80V'),
    fix: 'Use an inverter with one, or state dc_afci from the data sheet',
  })
}

function checkGroundFault(job: Job, inverterId: string, voltageV: Volts, circuits: readonly Circuit[]): void {
  const rule = groundingRules.find((candidate) => candidate.edition === job.edition)
  const where = `equipment.inverters.${inverterId}.ground_fault_protection`
  const currentA = Math.max(
    ...circuits.map((circuit) => (isAc(circuit) ? 0 : circuit.continuousA)),
    ...Object.values(job.project.arrays).map((array) =>
      array.inverter === inverterId ? SHORT_CIRCUIT_FACTOR * highestIscA(job, array) : 0,
    ),
  )
  const asked = voltageV > (rule?.faultProtectionAboveV ?? 0) || currentA > (rule?.faultProtectionAboveA ?? 0)
  const stated = inverterById(job, inverterId, where).ground_fault_protection
  if (!asked || stated === true) return
  job.worksheet.find({
    severity: stated === false ? 'error' : 'warning',
    id: 'wire.ground-fault',
    message: `the DC side of inverter ${inverterId} asks for ground-fault protection, which the inverter ${stated === false ? 'does not have' : 'does not state'}`,
    where,
    source: job.nec('dcGroundFault'),
    fix: 'State ground_fault_protection from the data sheet, or use another inverter',
  })
}

function highestIscA(job: Job, array: ArrayOfModules): Amperes {
  const module = own(job.project.equipment.modules, array.module)
  return (module === undefined ? undefined : ratedIsc(module, array)?.iscA) ?? Infinity
}

function checkDcDisconnect(job: Job, inverterId: string, circuits: readonly Circuit[]): void {
  const isString = circuits.some(
    ({ string }) => string !== undefined && own(job.project.inverter_units, string.unit)?.inverter === inverterId,
  )
  const where = `equipment.inverters.${inverterId}.dc_disconnect`
  const separate = Object.values(job.electrical.disconnects ?? {}).some((disconnect) => disconnect.kind === 'dc')
  if (!isString || separate || inverterById(job, inverterId, where).dc_disconnect === true) return
  job.worksheet.find({
    severity: 'error',
    id: 'wire.dc-disconnect',
    message: `no DC disconnect is stated for inverter ${inverterId}`,
    where,
    source: job.nec('pvDisconnect'),
    fix: 'State dc_disconnect: true when one is built in, or add one under electrical.disconnects',
  })
}
