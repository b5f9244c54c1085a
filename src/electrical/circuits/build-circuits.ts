import { CONTINUOUS_FACTOR } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import { branchSources, buildBranches } from './build-branches.js'
import { buildStrings } from './build-strings.js'
import { combineStrings } from './build-dc-combiners.js'
import { pairsOn, unitLines } from './lines-of.js'
import {
  COMBINED_OUTPUT,
  type Circuit,
  addPairs,
  highestLineA,
  pairCurrentsOf,
  serviceOf,
  twoWireEquivalentA,
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
  const dc = combineStrings(job, buildStrings(job))
  const strings = dc.filter(({ kind }) => kind === 'dc_string')
  const sources = [...branches, ...buildInverterOutputs(job, strings)]
  if (sources.length === 0)
    throw new StageError(
      'arrays',
      'no array has an inverter, so there is no AC circuit to size',
      'Name a module-level inverter in the array, or strings and inverter_units',
    )
  const ac = atTheConnection(job, sources)
  const all = [...dc, ...ac, ...buildSupplyTap(job, ac)]
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
      const lines = unitLines(job, where, unit, inverter)
      const pairCurrentsA = pairsOn(lines, 1, currentA, inverter)
      const output = acOutput(job, { id, kind: 'ac_inverter_output', where, lines, pairCurrentsA, inverters: 1 })
      return {
        ...output,
        maxDeviceA: makerMaxDeviceA(unit.inverter, inverter, undefined),
        makerRisePct: inverter.max_ac_rise_pct,
        inverterId: unit.inverter,
        inverter,
      }
    })
}

function combinedOutput(job: Job, sources: readonly Circuit[]): Circuit {
  const circuit = acOutput(job, {
    id: COMBINED_OUTPUT,
    kind: 'ac_combined_output',
    where: 'electrical.combiner',
    deviceWhere: 'electrical.connection.breaker_a',
    lines: serviceOf(job).phases === 3 ? 'ABC' : undefined,
    pairCurrentsA: addPairs(sources.map(pairCurrentsOf)),
    inverters: sources.reduce((sum, source) => sum + source.inverters, 0),
  })
  const deviceA = Math.max(circuit.smallestDeviceA, job.electrical.connection?.breaker_a ?? 0)
  return { ...circuit, deviceA, groundingDeviceA: deviceA }
}

/** What one AC circuit differs in from another. */
interface AcOutput extends Pick<Circuit, 'id' | 'kind' | 'where' | 'inverters' | 'lines'> {
  readonly pairCurrentsA: NonNullable<Circuit['pairCurrentsA']>
  /** Path of its device where it is another than that of the circuit. */
  readonly deviceWhere?: string
}

/** An AC circuit with the smallest device that its current allows. */
function acOutput(
  job: Job,
  { id, kind, where, deviceWhere = where, lines, pairCurrentsA, inverters }: AcOutput,
): Circuit {
  const continuousA = highestLineA(pairCurrentsA)
  const deviceA = nextStandardDeviceA(deviceDutyA(job, CONTINUOUS_FACTOR * continuousA), deviceWhere)
  return {
    id,
    kind,
    where,
    voltageV: serviceOf(job).lineToLineV,
    continuousA,
    operatingA: twoWireEquivalentA(pairCurrentsA),
    lines,
    pairCurrentsA,
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
