import { deviceSection, DWELLING_DC_LIMIT_V } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import { own, type Volts } from '../../values/index.js'
import {
  type Circuit,
  extremeLowC,
  inverterById,
  ratedIsc,
  outdoorDesignC,
  type Job,
  type StringFacts,
  type StringValues,
} from '../system/index.js'
import { cellRiseC } from './cell-rise.js'
import { coldVoltage } from './cold-voltage.js'
import { hotVoltageV } from './hot-voltage.js'
import type { OptimiserCase } from './optimiser-case.js'
import { checkOptimiserInput, type UnitInput } from './optimiser-input.js'
import { checkOptimiserString } from './optimiser-string.js'

/** Strings with a converter behind the modules: input and output of the converters, and what the inverter sees. */
export function checkOptimisers(job: Job, circuits: readonly Circuit[]): StringValues[] {
  return circuits.flatMap((circuit): StringValues[] => {
    const { string, id, where } = circuit
    if (string?.optimiser === undefined) return []
    const inverterId = own(job.project.inverter_units, string.unit)?.inverter ?? ''
    const inverter = inverterById(job, inverterId, `inverter_units.${string.unit}.inverter`)
    return [checkOne(job, { id, where, string, optimiser: string.optimiser, inverterId, inverter }, circuits)]
  })
}

function checkOne(job: Job, one: OptimiserCase, circuits: readonly Circuit[]): StringValues {
  const { id, string, optimiser, inverter } = one
  const input = unitInput(job, one)
  const highestV = recordHighest(job, one)
  const workingV = optimiser.sheet.regulated_string_v ?? highestV
  const limitV = Math.min(
    DWELLING_DC_LIMIT_V,
    string.module.max_system_voltage_v ?? Infinity,
    inverter.max_dc_voltage_v ?? Infinity,
  )
  const inputHolds = checkOptimiserInput(job, one, input)
  const limits = checkOptimiserString(job, one, { highestV, limitV }, circuits)
  return {
    id,
    modules: string.modules,
    voc_cold_v: highestV,
    vmp_hot_v: workingV,
    limit_v: limitV,
    min_modules: limits.leastModules,
    max_modules: limits.mostModules,
    complies: inputHolds && limits.holds,
    optimiser: {
      id: optimiser.id,
      units: optimiser.units,
      input_cold_v: input.coldV,
      input_isc_a: input.iscA,
      shutdown_v: optimiser.sheet.shutdown_v === undefined ? null : optimiser.units * optimiser.sheet.shutdown_v,
      string_power_w: string.modules * string.module.pmax_w,
    },
  }
}

/** What the modules of one unit give in the cold and in the heat. */
function unitInput(job: Job, { id, where, string, optimiser }: OptimiserCase): UnitInput {
  const { module, moduleId } = string
  const sheet = `equipment.modules.${moduleId}`
  const each = Math.min(optimiser.sheet.modules_per_unit ?? 1, string.modules)
  const parallel = optimiser.sheet.modules_wired === 'parallel'
  const series = parallel ? 1 : each
  const lowC = extremeLowC(job)
  const cold = coldVoltage(module, lowC, sheet)
  const coldV = job.worksheet.step({
    id: `wire.string.${id}.unit-cold`,
    says: `Open-circuit voltage at the input of one converter at the lowest expected ambient, by the ${cold.method}`,
    formula: 'V_in = n x V_oc x factor',
    inputs: [
      { symbol: 'n', value: series, unit: 'modules in series', from: `equipment.optimisers.${optimiser.id}` },
      { symbol: 'V_oc', value: module.voc_v ?? 0, unit: 'V', from: `${sheet}.voc_v` },
      { symbol: 'T_min', value: lowC, unit: 'deg C', from: 'design temperature' },
      { symbol: 'factor', value: cold.factor, unit: '', from: cold.method },
    ],
    result: { symbol: 'V_in', value: series * cold.moduleV, unit: 'V' },
    check: {
      relation: '<=',
      limit: optimiser.sheet.input_max_v,
      pass: series * cold.moduleV <= optimiser.sheet.input_max_v,
    },
    source: job.nec('maxDcVoltage'),
  })
  // Fewer modules on the last unit give less; where several share one, that one may hold a single module.
  const least = string.modules % each === 0 || parallel ? series : string.modules % each
  const hotV = least * hotVoltageV(module, outdoorDesignC(job) + cellRiseC(job, module), sheet)
  const iscA = (parallel ? each : 1) * moduleIscA(job, string, where)
  return { coldV, hotV, iscA, powerW: each * module.pmax_w, lastIsShort: string.modules % each !== 0 }
}

/** The string's own current is that of the converters, so that of the modules is asked for again. */
function moduleIscA(job: Job, { array, module, moduleId }: StringFacts, where: string): number {
  const rated = ratedIsc(module, own(job.project.arrays, array))
  if (rated !== undefined) return rated.iscA
  throw new StageError(
    `equipment.modules.${moduleId}.isc_a`,
    `the short-circuit current of ${where} is missing`,
    'It stands on the data sheet as Isc',
  )
}

/** Highest voltage of the string: what its listing says, or all units at their largest output. */
function recordHighest(job: Job, { id, where, optimiser }: OptimiserCase): Volts {
  const { sheet, units } = optimiser
  const place = `equipment.optimisers.${optimiser.id}`
  const { regulated_string_v: regulatedV, output_max_v: outputV } = sheet
  if (regulatedV === undefined && outputV === undefined)
    throw new StageError(
      `${place}.output_max_v`,
      'neither the largest output voltage of the converter nor the regulated voltage of its string is stated, so the highest voltage of the string is not known',
      'Take output_max_v from the data sheet, or regulated_string_v where the listing of converter and inverter states one',
    )
  return job.worksheet.step({
    id: `wire.string.${id}.voc-cold`,
    says:
      regulatedV === undefined
        ? 'Highest voltage of the string: every converter at its largest output'
        : 'Highest voltage of the string: converters and inverter are listed to hold it there',
    formula: regulatedV === undefined ? 'V_max = n x V_out' : 'V_max = V_regulated',
    inputs: [
      { symbol: 'n', value: units, unit: 'units', from: where },
      regulatedV === undefined
        ? { symbol: 'V_out', value: outputV ?? 0, unit: 'V', from: `${place}.output_max_v` }
        : { symbol: 'V_regulated', value: regulatedV, unit: 'V', from: `${place}.regulated_string_v` },
    ],
    result: { symbol: 'V_max', value: regulatedV ?? units * (outputV ?? 0), unit: 'V' },
    source: deviceSection(job.edition, 'converterVoltage'),
  })
}
