import { CONTINUOUS_FACTOR, SHORT_CIRCUIT_FACTOR } from '../../tables/nec/index.js'
import type { ArrayOfModules, PvModule, StringOfModules } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import {
  type Circuit,
  type StringFacts,
  optimiserById,
  positive,
  ratedIsc,
  type Job,
  nextStandardDeviceA,
} from '../system/index.js'
import { optimiserCircuit } from './optimiser-circuit.js'

/** Strings in parallel on one input from which on each needs a fuse. @source NEC 690.9(A) */
const FUSED_FROM = 3

/** DC string circuits, numbered within their array: `south_s1`. */
export function buildStrings(job: Job): Circuit[] {
  const inputs = new Map<string, number>()
  const all = Object.entries(job.project.arrays).flatMap(([arrayId, array]) =>
    (array.strings ?? []).map((string, i) => ({ arrayId, array, string, i })),
  )
  for (const { string } of all) inputs.set(inputKey(string), (inputs.get(inputKey(string)) ?? 0) + 1)
  return all.map(({ arrayId, array, string, i }) => {
    const facts = {
      array: arrayId,
      moduleId: array.module,
      module: moduleById(job, array.module, arrayId),
      modules: string.modules,
      unit: string.inverter_unit,
      input: string.input ?? 1,
      parallel: inputs.get(inputKey(string)) ?? 1,
    }
    const plain = stringCircuit(`${arrayId}_s${i + 1}`, `arrays.${arrayId}.strings[${i}]`, facts, array)
    if (array.optimiser === undefined) return plain
    const sheet = optimiserById(job, array.optimiser, `arrays.${arrayId}.optimiser`)
    return optimiserCircuit(plain, facts, { id: array.optimiser, sheet })
  })
}

const inputKey = (string: StringOfModules): string => `${string.inverter_unit}/${string.input ?? 1}`

/** A module of the project, looked up by id. */
export function moduleById(job: Job, id: string, arrayId: string): PvModule {
  const module = own(job.project.equipment.modules, id)
  if (module !== undefined) return module
  throw new StageError(
    `arrays.${arrayId}.module`,
    `there is no module '${id}' under equipment.modules`,
    `Use one of: ${Object.keys(job.project.equipment.modules ?? {}).join(', ') || '(none is stated)'}`,
  )
}

function stringCircuit(id: string, where: string, facts: Omit<StringFacts, 'iscA'>, array: ArrayOfModules): Circuit {
  const sheet = `equipment.modules.${facts.moduleId}`
  const rated = ratedIsc(facts.module, array)
  const iscA = ofSheet(rated?.iscA, `${sheet}.${rated?.key ?? 'isc_a'}`, 'the short-circuit current', 'Isc')
  const impA = ofSheet(facts.module.imp_a, `${sheet}.imp_a`, 'the current at maximum power', 'Imp')
  const vmpV = ofSheet(facts.module.vmp_v, `${sheet}.vmp_v`, 'the voltage at maximum power', 'Vmp')
  const continuousA = SHORT_CIRCUIT_FACTOR * iscA
  const smallestDeviceA = nextStandardDeviceA(CONTINUOUS_FACTOR * continuousA, where)
  return {
    id,
    kind: 'dc_string',
    where,
    voltageV: facts.modules * vmpV,
    continuousA,
    operatingA: impA,
    deviceA: facts.parallel >= FUSED_FROM ? smallestDeviceA : null,
    groundingDeviceA: smallestDeviceA,
    smallestDeviceA,
    maxDeviceA: facts.module.max_series_fuse_a,
    makerRisePct: undefined,
    inverterId: undefined,
    inverter: undefined,
    inverters: 0,
    trunk: undefined,
    arrays: { [facts.array]: facts.modules },
    string: { ...facts, iscA },
  }
}

function ofSheet(value: number | undefined, where: string, what: string, symbol: string): number {
  if (value !== undefined) return positive(value, where, what)
  throw new StageError(where, `${what} is missing`, `It stands on the module's data sheet as ${symbol}`)
}
