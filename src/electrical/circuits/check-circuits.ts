import { CONTINUOUS_FACTOR, deviceSection } from '../../tables/nec/index.js'
import { own, type Amperes } from '../../values/index.js'
import { checkInputs } from './check-inputs.js'
import { checkPhases } from './check-phases.js'
import { describeCurrent } from './describe-current.js'
import { recordAcModules } from './record-ac-modules.js'
import { currentTerms } from './current-terms.js'
import { deviceDutyA, isAc, isStorage, isSupplyTap, sizingSource, type Circuit, type Job } from '../system/index.js'

/** Currents and overcurrent device of every circuit on the worksheet, with the makers' limits. */
export function checkCircuits(job: Job, circuits: readonly Circuit[]): void {
  recordCircuits(job, circuits)
  recordAcModules(job)
  checkInputs(job, circuits)
  checkPhases(job, circuits)
}

/** The same without what only modules and inverters have. */
export function recordCircuits(job: Job, circuits: readonly Circuit[]): void {
  for (const circuit of circuits) {
    recordCurrent(job, circuit, circuits)
    if (isSupplyTap(circuit)) recordEndDevice(job, circuit)
    else if (circuit.combiner !== undefined) recordNoDevice(job, circuit)
    else recordDevice(job, circuit)
    checkMakerLimits(job, circuit)
  }
}

function recordCurrent(job: Job, circuit: Circuit, circuits: readonly Circuit[]): void {
  const { id } = circuit
  const { says, formula, inputs, ...rest } = { ...describeCurrent(job, circuit), ...currentTerms(circuit, circuits) }
  job.worksheet.note({
    id: `wire.${id}.current`,
    says,
    formula,
    inputs,
    result: { symbol: 'I_max', value: circuit.continuousA, unit: 'A' },
    ...rest,
  })
  job.worksheet.note({
    id: `wire.${id}.required`,
    says: 'Continuous duty: 125 percent of the maximum current, before any factor',
    formula: 'I_req = 1.25 x I_max',
    inputs: [{ symbol: 'I_max', value: circuit.continuousA, unit: 'A', from: `wire.${id}.current` }],
    result: { symbol: 'I_req', value: CONTINUOUS_FACTOR * circuit.continuousA, unit: 'A' },
    source: sizingSource(job, circuit),
  })
}

function recordDevice(job: Job, circuit: Circuit): void {
  const { id, deviceA, string } = circuit
  if (deviceA === null) {
    job.worksheet.note({
      id: `wire.${id}.device`,
      says: `No overcurrent device is needed: ${string?.parallel ?? 1} string(s) in parallel on the input`,
      formula: 'fuses from 3 strings in parallel on',
      inputs: [{ symbol: 'parallel', value: string?.parallel ?? 1, unit: '', from: circuit.where }],
      result: { symbol: 'device', value: 'none', unit: '' },
      source: job.nec('dcOcpdRating'),
    })
    return
  }
  const requiredA = CONTINUOUS_FACTOR * circuit.continuousA
  const dutyA = isStorage(circuit) ? requiredA : deviceDutyA(job, requiredA)
  job.worksheet.note({
    id: `wire.${id}.device`,
    says: `Overcurrent device: next standard rating from ${dutyA.toFixed(2)} A on${dutyA < requiredA ? ', the fraction of an ampere dropped' : ''}`,
    formula: 'smallest standard rating >= I_req, or a larger one that is stated',
    inputs: [{ symbol: 'I_req', value: requiredA, unit: 'A', from: `wire.${id}.required` }],
    result: { symbol: 'device', value: deviceA, unit: 'A' },
    ...(circuit.maxDeviceA === undefined
      ? {}
      : { check: { relation: '<=' as const, limit: circuit.maxDeviceA, pass: deviceA <= circuit.maxDeviceA } }),
    source: job.nec('standardDevice'),
  })
}

function recordNoDevice(job: Job, { id, combiner }: Circuit): void {
  job.worksheet.note({
    id: `wire.${id}.device`,
    says: 'No overcurrent device is needed: nothing but its own strings feeds the output of the DC combiner, and its conductors carry their sum',
    formula: 'sources <= conductor',
    inputs: [
      { symbol: 'strings', value: combiner?.strings.length ?? 0, unit: '', from: `electrical.dc_combiners.${id}` },
    ],
    result: { symbol: 'device', value: 'none', unit: '' },
    source: deviceSection(job.edition, 'noBackfeed'),
  })
}

function recordEndDevice(job: Job, { id, floor }: Circuit): void {
  job.worksheet.note({
    id: `wire.${id}.device`,
    says: 'No overcurrent device stands ahead of these conductors; they end at the one of the connection, which has to be within their ampacity',
    formula: 'ampacity >= device and >= the smallest service',
    inputs: [{ symbol: 'smallest service', value: floor?.leastA ?? 0, unit: 'A', from: 'edition' }],
    result: { symbol: 'device', value: floor?.endDeviceA ?? 0, unit: 'A' },
    source: job.nec('serviceConductor'),
  })
}

function checkMakerLimits(job: Job, circuit: Circuit): void {
  const { id, where, deviceA, maxDeviceA, trunk, inverter, inverters, string } = circuit
  const error = (key: string, message: string, fix: string, at = where): void => {
    job.worksheet.find({
      severity: 'error',
      id: `wire.${key}`,
      message,
      where: at,
      source: job.nec('listedEquipment'),
      fix,
    })
  }
  const maker = string?.optimiser === undefined ? 'module' : 'optimiser'
  const stated = statedBreakerA(job, circuit)
  const leastA = isAc(circuit) ? circuit.smallestDeviceA : CONTINUOUS_FACTOR * circuit.continuousA
  if (stated !== undefined && stated < leastA)
    error(
      'breaker-too-small',
      `the ${stated} A device stated for ${id} is below the ${circuit.smallestDeviceA} A that ${(CONTINUOUS_FACTOR * circuit.continuousA).toFixed(1)} A need`,
      `Use a ${circuit.smallestDeviceA} A device`,
    )
  if (deviceA !== null && maxDeviceA !== undefined && deviceA > maxDeviceA)
    error(
      'ocpd-above-maximum',
      `${id} needs a ${deviceA} A device, the makers allow ${maxDeviceA} A`,
      isStorage(circuit)
        ? 'Put fewer units on one circuit (storage.installation.units_per_circuit)'
        : isAc(circuit)
          ? 'Put fewer inverters on the branch'
          : `Use ${maker === 'module' ? 'a module' : 'an optimiser'} with a larger series fuse rating`,
    )
  if (trunk !== undefined && circuit.continuousA > trunk.cable.ampacity_a)
    error(
      'trunk-ampacity',
      `${id} carries ${circuit.continuousA.toFixed(1)} A, the trunk cable takes ${trunk.cable.ampacity_a} A`,
      'Put fewer inverters on the branch',
    )
  const most = Math.min(inverter?.max_per_branch ?? Infinity, trunk?.cable.max_inverters ?? Infinity)
  if (circuit.kind === 'ac_branch' && inverters > most)
    error(
      'too-many-inverters',
      `${id} holds ${inverters} inverters, the makers allow ${most}`,
      'Put fewer inverters on the branch',
    )
  if (trunk !== undefined && inverter?.needs_egc !== false && trunk.cable.has_egc !== true)
    job.worksheet.find({
      severity: 'note',
      id: 'wire.inverter-ground',
      message: `the trunk of ${id} has no grounding conductor, so the array conductor has to reach every inverter that needs one`,
      where,
      source: job.nec('equipmentGrounding'),
      fix: 'State needs_egc: false when the data sheet says that the inverter needs none',
    })
  if (string !== undefined && string.parallel >= 2 && maxDeviceA === undefined)
    error(
      'series-fuse-unknown',
      `strings in parallel on the input of ${id} need the ${maker}'s ${string.optimiser === undefined ? 'maximum series fuse' : 'largest string fuse'}, which is not stated`,
      `It stands on the ${maker}'s data sheet`,
      string.optimiser === undefined
        ? `equipment.modules.${string.moduleId}.max_series_fuse_a`
        : `equipment.optimisers.${string.optimiser.id}.max_string_fuse_a`,
    )
  if (string?.parallel === 2 && deviceA === null && maxDeviceA !== undefined && circuit.continuousA > maxDeviceA)
    error(
      'string-backfeed',
      `the other string can feed ${circuit.continuousA.toFixed(1)} A into ${id}, the ${maker}s take ${maxDeviceA} A`,
      'Give each string its own input, or fuse them',
    )
}

function statedBreakerA(job: Job, circuit: Circuit): Amperes | undefined {
  const { installation } = job.project.storage ?? {}
  if (circuit.kind === 'ac_storage') return installation?.breaker_a
  if (circuit.kind === 'dc_storage') return installation?.battery_breaker_a
  const { branches, combiner, connection } = job.electrical
  if (circuit.kind === 'ac_branch') return own(branches, circuit.id)?.breaker_a
  if (circuit.kind === 'dc_string')
    return Object.values(job.electrical.dc_combiners ?? {}).find(({ inputs }) => inputs.includes(circuit.id))?.fuse_a
  if (circuit.kind === 'ac_combined_output') return connection?.breaker_a
  return circuit.kind === 'ac_inverter_output' && combiner === undefined ? connection?.breaker_a : undefined
}
