import type { Disconnect } from '../project/index.js'
import {
  ARC_FAULT_FROM_V,
  groundingRules,
  lockableDisconnect,
  necSource,
  rapidShutdownRules,
} from '../tables/nec/index.js'
import { own } from '../values/index.js'
import { isSupplyTap, type Circuit, type ServiceFloor } from './circuit.js'
import { inverterById } from './inverter-output.js'
import type { Job } from './job.js'
import { nextStandardDeviceA } from './standard-device.js'
import type { StringValues } from './wiring-values.js'

/** Rapid shutdown, arc-fault, ground-fault and disconnects: what the edition asks and what the project declares. */
export function checkShutdown(
  job: Job,
  circuits: readonly Circuit[],
  strings: readonly StringValues[],
  outputA: number,
): void {
  checkRapidShutdown(job, circuits)
  checkInsideVoltage(job, circuits, strings)
  for (const [inverterId, voltageV] of highestVoltages(job, circuits, strings)) {
    checkArcFault(job, inverterId, voltageV)
    checkGroundFault(job, inverterId, voltageV, circuits)
    checkDcDisconnect(job, inverterId, circuits)
  }
  checkDisconnects(job, outputA, circuits.find(isSupplyTap)?.floor)
}

function checkRapidShutdown(job: Job, circuits: readonly Circuit[]): void {
  const rule = rapidShutdownRules.find((candidate) => candidate.edition === job.edition)
  if (rule === undefined) return
  const source = necSource(job.edition, rule.section, rule.standing)
  const stated = job.electrical.rapid_shutdown
  const strings = circuits.some((circuit) => circuit.kind === 'dc_string')
  job.worksheet.note({
    id: 'wire.rapid-shutdown',
    says: `Rapid shutdown: ${rule.outsideLimit} within ${rule.timeS} s beyond the boundary (${rule.boundary}); inside: ${rule.insideLimit}`,
    formula: 'controlled conductors at or below the limit',
    inputs: [
      { symbol: 'initiator', value: stated?.initiator ?? 'not stated', unit: '', from: 'electrical.rapid_shutdown' },
    ],
    result: { symbol: 'limit', value: rule.outsideLimit, unit: '' },
    source,
    limits: rule.moduleLevelNote,
  })
  if (strings && stated?.inside_boundary === undefined)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.rapid-shutdown-array',
      message:
        'how the string conductors are brought down in the array within the boundary and beyond it is not stated',
      where: 'electrical.rapid_shutdown.inside_boundary',
      source,
      fix: 'State module_level (shutdown units behind the modules), hazard_control_system or no_exposed_parts',
    })
  if (stated?.initiator === undefined)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.rapid-shutdown-initiator',
      message: 'what starts the rapid shutdown is not stated',
      where: 'electrical.rapid_shutdown.initiator',
      source,
      fix: 'With module-level inverters the service or PV disconnect does it; state which',
    })
  if (rule.initiatorOutdoors && stated?.initiator_outdoors !== true)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.rapid-shutdown-outdoors',
      message: 'the initiator of a dwelling has to be readily accessible outside, which the project does not state',
      where: 'electrical.rapid_shutdown.initiator_outdoors',
      source,
      fix: 'Put the disconnect that starts it outside and state initiator_outdoors: true',
    })
}

/**
 * The voltage that stays inside the array boundary: with shutdown behind every module that of one module in the cold.
 * A listed hazard control system, or an array without exposed parts, has no such limit.
 */
function checkInsideVoltage(job: Job, circuits: readonly Circuit[], strings: readonly StringValues[]): void {
  const rule = rapidShutdownRules.find((candidate) => candidate.edition === job.edition)
  const chosen = job.electrical.rapid_shutdown?.inside_boundary ?? 'module_level'
  if (rule?.insideVoltage === undefined || chosen !== 'module_level') return
  const { limitV, section } = rule.insideVoltage
  const highest = new Map<string, number>()
  for (const { id, modules, voc_cold_v: coldV } of strings) {
    const array = circuits.find((circuit) => circuit.id === id)?.string?.array ?? id
    highest.set(array, Math.max(coldV / modules, highest.get(array) ?? 0))
  }
  for (const [array, moduleV] of highest)
    if (moduleV > limitV)
      job.worksheet.find({
        severity: 'error',
        id: 'wire.rapid-shutdown-voltage',
        message: `a module of array ${array} alone opens at ${moduleV.toFixed(1)} V in the cold; after rapid shutdown ${limitV} V is the most inside the array boundary`,
        where: `arrays.${array}.module`,
        source: necSource(job.edition, section, rule.standing),
        fix: 'Use modules of a lower voltage, or a listed hazard control system (inside_boundary: hazard_control_system)',
      })
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

function checkArcFault(job: Job, inverterId: string, voltageV: number): void {
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

function checkGroundFault(job: Job, inverterId: string, voltageV: number, circuits: readonly Circuit[]): void {
  const rule = groundingRules.find((candidate) => candidate.edition === job.edition)
  const where = `equipment.inverters.${inverterId}.ground_fault_protection`
  const currentA = Math.max(
    ...circuits.map((circuit) => (circuit.kind === 'dc_string' ? circuit.continuousA : 0)),
    ...Object.values(job.project.arrays).map((array) =>
      array.inverter === inverterId ? 1.25 * (own(job.project.equipment.modules, array.module)?.isc_a ?? Infinity) : 0,
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

function checkDisconnects(job: Job, outputA: number, service: ServiceFloor | undefined): void {
  const { disconnects } = job.electrical
  const source = job.nec('pvDisconnect')
  const pv = Object.entries(disconnects ?? {}).filter(([, disconnect]) => disconnect.kind === 'pv_system')
  const supply = service !== undefined
  if (pv.length === 0)
    job.worksheet.find({
      severity: supply ? 'error' : 'note',
      id: 'wire.pv-disconnect',
      message: supply
        ? 'a supply-side connection needs a PV disconnect that is rated as service equipment, and none is stated'
        : 'no PV disconnect is stated, so the backfed breaker serves as it; it has to be readily accessible and marked',
      where: 'electrical.disconnects',
      source,
      fix: supply
        ? 'Add one under electrical.disconnects'
        : 'Ask utility and authority whether they want a visible switch outside',
    })
  for (const [id, disconnect] of pv) {
    const where = `electrical.disconnects.${id}`
    const fail = (severity: 'error' | 'warning', key: string, message: string, fix: string): void => {
      job.worksheet.find({ severity, id: `wire.${key}`, message: `PV disconnect ${id} ${message}`, where, source, fix })
    }
    if (disconnect.rating_a === undefined) fail('warning', 'disconnect-rating-unknown', 'states no rating', 'State it')
    else if (disconnect.rating_a < 1.25 * outputA)
      fail(
        'error',
        'disconnect-rating',
        `is rated ${disconnect.rating_a} A, ${(1.25 * outputA).toFixed(1)} A are needed`,
        'Use a larger switch',
      )
    if (disconnect.readily_accessible === false)
      fail('error', 'disconnect-access', 'is not readily accessible', 'Move it')
    if (lockableDisconnect.includes(job.edition) && disconnect.lockable !== true)
      fail(
        disconnect.lockable === false ? 'error' : 'warning',
        'disconnect-lock',
        'is not stated to be lockable open',
        'Use one with a hasp and state lockable: true',
      )
    if (supply && disconnect.service_rated !== true)
      fail(
        'error',
        'disconnect-service-rated',
        'is not stated to be rated as service equipment',
        'Use one marked suitable for use as service equipment',
      )
  }
  if (service !== undefined && pv.length > 0) checkServiceDisconnects(job, pv, service)
}

/** PV disconnects ahead of the main are service disconnects: large enough for a service and holding the overcurrent device. */
function checkServiceDisconnects(
  job: Job,
  pv: readonly (readonly [string, Disconnect])[],
  { endDeviceA, leastA }: ServiceFloor,
): void {
  const own = pv.length === 1 ? endDeviceA : 0
  for (const [id, { rating_a: ratingA = Infinity }] of pv)
    if (ratingA < Math.max(leastA, own))
      job.worksheet.find({
        severity: 'error',
        id: 'wire.supply-side-disconnect-small',
        message: `PV disconnect ${id} is rated ${ratingA} A; on the supply side ${leastA} A is the least${own > leastA ? `, and its overcurrent device is ${own} A` : ''}`,
        where: `electrical.disconnects.${id}.rating_a`,
        source: job.nec('serviceDisconnectRating'),
        fix: `Use one of at least ${nextStandardDeviceA(Math.max(leastA, own), 'electrical.disconnects')} A; a smaller fuse may stand in it, and ask the authority before you count the system as a service of one or two circuits`,
      })
  if (pv.some(([, { fused, breaker }]) => fused === true || breaker === true)) return
  job.worksheet.find({
    severity: 'error',
    id: 'wire.supply-side-unfused',
    message: `no PV disconnect on the supply side is stated to hold the ${endDeviceA} A overcurrent device that belongs in it or right beside it`,
    where: `electrical.disconnects.${pv[0]?.[0] ?? ''}`,
    source: job.nec('serviceOvercurrent'),
    fix: `Use a switch with ${endDeviceA} A fuses and state fused: true, or an enclosed ${endDeviceA} A circuit breaker and state breaker: true`,
  })
}
