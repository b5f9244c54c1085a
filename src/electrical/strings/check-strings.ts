import { isAcModule } from '../../project/facts.js'
import type { Inverter, PvModule } from '../../project/index.js'
import { DWELLING_DC_LIMIT_V } from '../../tables/nec/index.js'
import { own, type Volts } from '../../values/index.js'
import {
  type Circuit,
  inverterById,
  extremeLowC,
  outdoorDesignC,
  practice,
  type Job,
  type StringValues,
} from '../system/index.js'
import { coldVoltage } from './cold-voltage.js'
import { hotCoefficient, hotVoltageV } from './hot-voltage.js'
import { recordCellTemperature, recordColdFactor, recordMostAndLeast } from './record-cold.js'
import { moduleById } from '../circuits/index.js'
import { cellRiseC } from './cell-rise.js'
import { checkOptimisers } from './check-optimisers.js'
import { stringLimits } from './string-limits.js'
import { tellVoltageUnknown } from './voltage-unknown.js'

/** A string, or the single module of a module-level inverter. */
interface StringCase {
  readonly id: string
  readonly where: string
  readonly moduleId: string
  readonly module: PvModule
  readonly modules: number
  readonly inverterId: string
  readonly inverter: Inverter
}

/** Cold and hot voltage of every string, and of the module on a module-level inverter. */
export function checkStrings(job: Job, circuits: readonly Circuit[]): StringValues[] {
  const strings = circuits.flatMap((circuit): StringCase[] => {
    const { string } = circuit
    if (string === undefined || string.optimiser !== undefined) return []
    const inverterId = own(job.project.inverter_units, string.unit)?.inverter ?? ''
    const inverter = inverterById(job, inverterId, `inverter_units.${string.unit}.inverter`)
    return [{ ...string, id: circuit.id, where: circuit.where, inverterId, inverter }]
  })
  const singles = Object.entries(job.project.arrays).flatMap(([arrayId, array]): StringCase[] => {
    if (array.inverter === undefined || isAcModule(array.inverter)) return []
    const inverter = inverterById(job, array.inverter, `arrays.${arrayId}.inverter`)
    const module = moduleById(job, array.module, arrayId)
    return [
      {
        id: arrayId,
        where: `arrays.${arrayId}`,
        moduleId: array.module,
        module,
        modules: 1,
        inverterId: array.inverter,
        inverter,
      },
    ]
  })
  return [...[...strings, ...singles].map((string) => checkString(job, string)), ...checkOptimisers(job, circuits)]
}

function checkString(job: Job, string: StringCase): StringValues {
  const { id, module, modules, inverter } = string
  const sheet = `equipment.modules.${string.moduleId}`
  const lowC = extremeLowC(job)
  const cold = coldVoltage(module, lowC, sheet)
  recordColdFactor(job, id, { module, sheet, lowC }, cold)
  const vocColdV = job.worksheet.step({
    id: `wire.string.${id}.voc-cold`,
    says: `Open-circuit voltage at the lowest expected ambient, by the ${cold.method}${cold.byTableV === undefined ? '' : ` (by the code table ${(cold.byTableV * modules).toFixed(1)} V)`}`,
    formula: 'V_cold = n x V_oc x factor',
    inputs: [
      { symbol: 'n', value: modules, unit: '', from: string.where },
      { symbol: 'V_oc', value: module.voc_v ?? 0, unit: 'V', from: `${sheet}.voc_v` },
      { symbol: 'factor', value: cold.factor, unit: '', from: `wire.string.${id}.voc-factor` },
    ],
    result: { symbol: 'V_cold', value: modules * cold.moduleV, unit: 'V' },
    source: job.nec('maxDcVoltage'),
  })
  const cellC = outdoorDesignC(job) + cellRiseC(job, module)
  recordCellTemperature(job, id, outdoorDesignC(job), cellC)
  const hotModuleV = hotVoltageV(module, cellC, sheet)
  const vmpHotV = job.worksheet.step({
    id: `wire.string.${id}.vmp-hot`,
    says: 'Voltage at maximum power with the hottest cells',
    formula: 'V_hot = n x V_mp x (1 + beta x (T_cell - 25))',
    inputs: [
      { symbol: 'n', value: modules, unit: '', from: string.where },
      { symbol: 'V_mp', value: module.vmp_v ?? 0, unit: 'V', from: `${sheet}.vmp_v` },
      { symbol: 'beta', ...hotCoefficient(module, sheet) },
      { symbol: 'T_cell', value: cellC, unit: 'deg C', from: `wire.string.${id}.cell` },
    ],
    result: { symbol: 'V_hot', value: modules * hotModuleV, unit: 'V' },
    source: practice('temperature coefficient of the data sheet'),
  })
  const limitV = Math.min(
    DWELLING_DC_LIMIT_V,
    module.max_system_voltage_v ?? Infinity,
    inverter.max_dc_voltage_v ?? Infinity,
  )
  const windowV = Math.max(inverter.mppt_min_v ?? 0, inverter.start_v ?? 0)
  const limits = stringLimits(limitV, cold.moduleV, windowV, hotModuleV)
  recordMostAndLeast(job, id, { limitV, windowV, coldModuleV: cold.moduleV, hotModuleV }, limits)
  recordLimits(job, string, limitV, windowV, limits)
  const complies = vocColdV <= limitV && vmpHotV >= windowV
  reportString(job, string, { vocColdV, vmpHotV, limitV, windowV }, limits)
  return {
    id,
    modules,
    voc_cold_v: vocColdV,
    vmp_hot_v: vmpHotV,
    limit_v: limitV,
    min_modules: limits.leastModules,
    max_modules: limits.mostModules,
    complies,
  }
}

function recordLimits(
  job: Job,
  { id }: StringCase,
  limitV: Volts,
  windowV: Volts,
  { leastModules, mostModules }: ReturnType<typeof stringLimits>,
): void {
  job.worksheet.note({
    id: `wire.string.${id}.length`,
    says: 'Modules in series that dwelling, module and inverter allow',
    formula: 'from the fewest to the most modules',
    inputs: [
      { symbol: 'V_limit', value: limitV, unit: 'V', from: 'lowest of dwelling, module and inverter' },
      { symbol: 'V_window', value: windowV, unit: 'V', from: 'lower end of the tracking range' },
    ],
    result: { symbol: 'n', value: `${leastModules} to ${mostModules}`, unit: 'modules' },
    source: job.nec('maxDcVoltage'),
  })
}

function reportString(
  job: Job,
  { id, where, modules, inverter, inverterId }: StringCase,
  v: { readonly vocColdV: Volts; readonly vmpHotV: Volts; readonly limitV: Volts; readonly windowV: Volts },
  limits: ReturnType<typeof stringLimits>,
): void {
  if (v.vocColdV > v.limitV)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.voltage-cold',
      message: `string ${id} of ${modules} reaches ${v.vocColdV.toFixed(1)} V in the cold, ${v.limitV} V is the limit`,
      where,
      source: job.nec('maxDcVoltage'),
      fix: `Use at most ${limits.mostModules} modules in series`,
    })
  if (v.vmpHotV < v.windowV)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.voltage-hot',
      message: `string ${id} falls to ${v.vmpHotV.toFixed(1)} V in the heat, the inverter works from ${v.windowV} V`,
      where,
      source: job.nec('listedEquipment'),
      fix: `Use at least ${limits.leastModules} modules in series`,
    })
  if (inverter.mppt_max_v !== undefined && v.vocColdV > inverter.mppt_max_v)
    job.worksheet.find({
      severity: 'note',
      id: 'wire.voltage-above-window',
      message: `string ${id} can open at ${v.vocColdV.toFixed(1)} V, above the tracking range that ends at ${inverter.mppt_max_v} V`,
      where,
    })
  tellVoltageUnknown(job, inverterId, inverter)
}
