import { CONTINUOUS_FACTOR } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import { own, type Amperes } from '../../values/index.js'
import { branchSources, buildBranches } from './build-branches.js'
import { buildStrings } from './build-strings.js'
import {
  COMBINED_OUTPUT,
  SERVICE_VOLTAGE_V,
  type Circuit,
  deviceDutyA,
  inverterById,
  makerMaxDeviceA,
  outputCurrentA,
  type Job,
  nextStandardDeviceA,
} from '../system/index.js'
import { buildSupplyTap } from './supply-tap.js'

/**
 * All circuits of the project: strings, branches, inverter outputs, combined output, conductors of a supply-side connection.
 *
 * @throws StageError when there is no inverter, or two circuits have the same id.
 */
export function buildCircuits(job: Job): Circuit[] {
  return circuitsWith(job, buildBranches(job))
}

/** All circuits without trunks: enough to judge the connection. */
export function buildSources(job: Job): Circuit[] {
  return circuitsWith(job, branchSources(job))
}

function circuitsWith(job: Job, branches: readonly Circuit[]): Circuit[] {
  const strings = buildStrings(job)
  const sources = [...branches, ...buildInverterOutputs(job, strings)]
  if (sources.length === 0)
    throw new StageError(
      'arrays',
      'no array has an inverter, so there is no AC circuit to size',
      'Name a module-level inverter in the array, or strings and inverter_units',
    )
  const ac = atTheConnection(job, sources)
  const all = [...strings, ...ac, ...buildSupplyTap(job, ac)]
  const seen = new Set<string>()
  for (const { id, where } of all) {
    if (seen.has(id)) throw new StageError(where, `two circuits are called '${id}'`, 'Rename one of them')
    seen.add(id)
  }
  return all
}

/** Adds the combined output, or gives the only source the breaker that the person has chosen. */
function atTheConnection(job: Job, sources: readonly Circuit[]): Circuit[] {
  if (job.electrical.combiner !== undefined) return [...sources, combinedOutput(job, sources)]
  const [only] = sources
  const chosenA = job.electrical.connection?.breaker_a
  if (only === undefined || sources.length > 1 || chosenA === undefined) return [...sources]
  const deviceA = Math.max(only.deviceA ?? 0, chosenA)
  return [{ ...only, deviceA, groundingDeviceA: deviceA }]
}

function buildInverterOutputs(job: Job, strings: readonly Circuit[]): Circuit[] {
  const units = job.project.inverter_units ?? {}
  const used = new Set(strings.map((circuit) => circuit.string?.unit))
  for (const { string, where } of strings)
    if (string !== undefined && own(units, string.unit) === undefined)
      throw new StageError(
        `${where}.inverter_unit`,
        `there is no inverter unit '${string.unit}'; known are ${Object.keys(units).join(', ') || '(none)'}`,
        'Add it under inverter_units',
      )
  return Object.entries(units)
    .filter(([id]) => used.has(id))
    .map(([id, unit]) => {
      const where = `inverter_units.${id}`
      const inverter = inverterById(job, unit.inverter, `${where}.inverter`)
      const currentA = outputCurrentA(job, unit.inverter, inverter)
      const smallestDeviceA = nextStandardDeviceA(deviceDutyA(job, CONTINUOUS_FACTOR * currentA), where)
      return {
        ...acOutput({ id, kind: 'ac_inverter_output', where, currentA, deviceA: smallestDeviceA, inverters: 1 }),
        maxDeviceA: makerMaxDeviceA(unit.inverter, inverter, undefined),
        makerRisePct: inverter.max_ac_rise_pct,
        inverterId: unit.inverter,
        inverter,
      }
    })
}

function combinedOutput(job: Job, sources: readonly Circuit[]): Circuit {
  const currentA = sources.reduce((sum, source) => sum + source.continuousA, 0)
  const inverters = sources.reduce((sum, source) => sum + source.inverters, 0)
  const smallestA = nextStandardDeviceA(
    deviceDutyA(job, CONTINUOUS_FACTOR * currentA),
    'electrical.connection.breaker_a',
  )
  const circuit = acOutput({
    id: COMBINED_OUTPUT,
    kind: 'ac_combined_output',
    where: 'electrical.combiner',
    currentA,
    deviceA: smallestA,
    inverters,
  })
  const deviceA = Math.max(smallestA, job.electrical.connection?.breaker_a ?? 0)
  return { ...circuit, deviceA, groundingDeviceA: deviceA }
}

/** What one AC circuit differs in from another. */
interface AcOutput extends Pick<Circuit, 'id' | 'kind' | 'where' | 'inverters'> {
  readonly currentA: Amperes
  /** The smallest device that its current allows. */
  readonly deviceA: Amperes
}

function acOutput({ id, kind, where, currentA, deviceA, inverters }: AcOutput): Circuit {
  return {
    id,
    kind,
    where,
    voltageV: SERVICE_VOLTAGE_V,
    continuousA: currentA,
    operatingA: currentA,
    deviceA,
    groundingDeviceA: deviceA,
    smallestDeviceA: deviceA,
    maxDeviceA: undefined,
    makerRisePct: undefined,
    inverterId: undefined,
    inverter: undefined,
    inverters,
    trunk: undefined,
    arrays: {},
    string: undefined,
  }
}
