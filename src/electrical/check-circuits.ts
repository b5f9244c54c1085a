import { own } from '../values/index.js'
import { isAc, type Circuit } from './circuit.js'
import { inverterById } from './inverter-output.js'
import type { Job } from './job.js'

/** Currents and overcurrent device of every circuit on the worksheet, with the makers' limits. */
export function checkCircuits(job: Job, circuits: readonly Circuit[]): void {
  for (const circuit of circuits) {
    recordCurrent(job, circuit)
    recordDevice(job, circuit)
    checkMakerLimits(job, circuit)
  }
  checkInputs(job, circuits)
}

function recordCurrent(job: Job, circuit: Circuit): void {
  const { id, where, string } = circuit
  const ac = isAc(circuit)
  job.worksheet.note({
    id: `wire.${id}.current`,
    says: ac
      ? `Maximum current of ${id}: rated continuous output`
      : `Maximum current of ${id}: 125 percent of the short-circuit current`,
    formula: ac ? 'I_max = sum of rated outputs' : 'I_max = 1.25 x I_sc',
    inputs: ac
      ? [{ symbol: 'inverters', value: circuit.inverters, unit: '', from: where }]
      : [
          {
            symbol: 'I_sc',
            value: string?.iscA ?? 0,
            unit: 'A',
            from: `equipment.modules.${string?.moduleId ?? ''}.isc_a`,
          },
        ],
    result: { symbol: 'I_max', value: circuit.continuousA, unit: 'A' },
    source: job.nec(ac ? 'inverterOutputCurrent' : 'sourceCircuitCurrent'),
  })
  job.worksheet.note({
    id: `wire.${id}.required`,
    says: 'Continuous duty: 125 percent of the maximum current, before any factor',
    formula: 'I_req = 1.25 x I_max',
    inputs: [{ symbol: 'I_max', value: circuit.continuousA, unit: 'A', from: `wire.${id}.current` }],
    result: { symbol: 'I_req', value: 1.25 * circuit.continuousA, unit: 'A' },
    source: job.nec(ac ? 'acOutputSizing' : 'dcConductorAmpacity'),
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
  job.worksheet.note({
    id: `wire.${id}.device`,
    says: `Overcurrent device: next standard rating from ${(1.25 * circuit.continuousA).toFixed(2)} A on`,
    formula: 'device >= I_req',
    inputs: [{ symbol: 'I_req', value: 1.25 * circuit.continuousA, unit: 'A', from: `wire.${id}.required` }],
    result: { symbol: 'device', value: deviceA, unit: 'A' },
    ...(circuit.maxDeviceA === undefined
      ? {}
      : { check: { relation: '<=' as const, limit: circuit.maxDeviceA, pass: deviceA <= circuit.maxDeviceA } }),
    source: job.nec('standardDevice'),
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
  const stated = statedBreakerA(job, circuit)
  if (stated !== undefined && stated < circuit.smallestDeviceA)
    error(
      'breaker-too-small',
      `the ${stated} A device stated for ${id} is below the ${circuit.smallestDeviceA} A that ${(1.25 * circuit.continuousA).toFixed(1)} A need`,
      `Use a ${circuit.smallestDeviceA} A device`,
    )
  if (deviceA !== null && maxDeviceA !== undefined && deviceA > maxDeviceA)
    error(
      'ocpd-above-maximum',
      `${id} needs a ${deviceA} A device, the makers allow ${maxDeviceA} A`,
      isAc(circuit) ? 'Put fewer inverters on the branch' : 'Use a module with a larger series fuse rating',
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
      `strings in parallel on the input of ${id} need the module's maximum series fuse, which is not stated`,
      "It stands on the module's data sheet",
      `equipment.modules.${string.moduleId}.max_series_fuse_a`,
    )
  if (string?.parallel === 2 && maxDeviceA !== undefined && circuit.continuousA > maxDeviceA)
    error(
      'string-backfeed',
      `the other string can feed ${circuit.continuousA.toFixed(1)} A into ${id}, the modules take ${maxDeviceA} A`,
      'Give each string its own input, or fuse them',
    )
}

function statedBreakerA(job: Job, circuit: Circuit): number | undefined {
  const { branches, combiner, connection } = job.electrical
  if (circuit.kind === 'ac_branch') return own(branches, circuit.id)?.breaker_a
  if (circuit.kind === 'ac_combined_output') return connection?.breaker_a
  return circuit.kind === 'ac_inverter_output' && combiner === undefined ? connection?.breaker_a : undefined
}

/** Short-circuit and operating current of every inverter input. @source NEC 110.3(B) */
function checkInputs(job: Job, circuits: readonly Circuit[]): void {
  const inputs = new Map<string, Circuit[]>()
  for (const circuit of circuits) {
    if (circuit.string === undefined) continue
    const name = `${circuit.string.unit} input ${circuit.string.input}`
    inputs.set(name, [...(inputs.get(name) ?? []), circuit])
  }
  for (const [name, strings] of inputs) {
    const facts = strings[0]?.string
    if (facts === undefined) continue
    const where = `inverter_units.${facts.unit}`
    const inverter = inverterById(job, own(job.project.inverter_units, facts.unit)?.inverter ?? '', where)
    const iscA = strings.reduce((sum, circuit) => sum + (circuit.string?.iscA ?? 0), 0)
    const impA = strings.reduce((sum, circuit) => sum + circuit.operatingA, 0)
    const source = job.nec('listedEquipment')
    if (facts.input > (inverter.mppt_inputs ?? facts.input))
      job.worksheet.find({
        severity: 'error',
        id: 'wire.no-such-input',
        message: `${name} does not exist: the inverter has ${inverter.mppt_inputs} inputs`,
        where,
        fix: 'Use an input that the inverter has',
      })
    if (inverter.max_input_isc_a !== undefined && iscA > inverter.max_input_isc_a)
      job.worksheet.find({
        severity: 'error',
        id: 'wire.input-short-circuit',
        message: `${name} gets ${iscA.toFixed(1)} A short-circuit current, ${inverter.max_input_isc_a} A is the limit`,
        where,
        source,
        fix: 'Connect fewer strings to this input',
      })
    if (inverter.max_input_current_a !== undefined && impA > inverter.max_input_current_a)
      job.worksheet.find({
        severity: 'warning',
        id: 'wire.input-current',
        message: `${name} gets ${impA.toFixed(1)} A at maximum power and uses only ${inverter.max_input_current_a} A`,
        where,
        source,
        fix: 'Expect clipping, or connect fewer strings to this input',
      })
  }
}
