import { listModuleGroups } from '../../project/index.js'
import type { PvModule } from '../../project/index.js'
import { READING_CELL_C, TEST_LIMITS } from '../../tables/fieldwork/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { StageError } from '../../worksheet/index.js'
import type { PlanInput } from './plan-input.js'
import type { VoltageReading } from './plan-values.js'
import type { Celsius, Volts } from '../../values/index.js'

/**
 * Open-circuit voltages that the meter should show, by the temperature of the cells.
 *
 * @throws StageError when a module states no open-circuit voltage or no coefficient of it.
 * @source Module data sheet: Voc(T) = Voc (1 + beta (T - 25 C))
 */
export function voltageReadings({ project, cellC }: PlanInput, worksheet: Worksheet): VoltageReading[] {
  const temperatures = cellC === undefined ? READING_CELL_C : [cellC]
  const groups = listModuleGroups(project)
  const modules = new Map(groups.map((group) => [group.array.module, group.module]))
  const readings = [...modules].flatMap(([id, module]) =>
    temperatures.map((temperature) => {
      const volts = moduleVocV(id, module, temperature)
      worksheet.step({
        id: `work.voc.${id}.${temperature}-c`,
        says: `Open-circuit voltage of one module ${module.name ?? id} at ${temperature} C cell temperature`,
        formula: 'Voc(T) = Voc + b (T - 25)',
        inputs: [
          { symbol: 'Voc', value: module.voc_v ?? 0, unit: 'V', from: `equipment.modules.${id}.voc_v` },
          { symbol: 'b', value: coefficientVPerC(id, module), unit: 'V/C', from: `equipment.modules.${id}` },
          {
            symbol: 'T',
            value: temperature,
            unit: 'C',
            from: cellC === undefined ? 'table of temperatures' : '--cell-temperature',
          },
        ],
        result: { symbol: 'Voc(T)', value: volts, unit: 'V' },
        source: { document: module.sheet ?? `data sheet of ${id}`, standing: 'project file' },
        limits: 'full sun on the module; in weak light a little less',
      })
      return {
        what: `module ${module.name ?? id}`,
        modules: 1,
        cell_c: temperature,
        voc_v: volts,
        ...vocRange(volts, 0),
        one_module_less_v: null,
      }
    }),
  )
  const strings = groups.flatMap((group) =>
    group.conversion.kind === 'string' && group.array.optimiser === undefined
      ? group.conversion.strings.flatMap((string, index) =>
          temperatures.map((temperature): VoltageReading => {
            const volts = moduleVocV(group.array.module, group.module, temperature)
            return {
              what: `string ${index + 1} of array ${group.id}`,
              modules: string.modules,
              cell_c: temperature,
              voc_v: string.modules * volts,
              ...vocRange(string.modules * volts, volts),
              one_module_less_v: (string.modules - 1) * volts,
            }
          }),
        )
      : [],
  )
  return [...readings, ...strings]
}

/**
 * What may be read for an open voltage: 5 % to each side, but on this side of half a module fewer or more, which would
 * be a string of another length.
 *
 * @source 5 % between like strings: see WORK_SOURCES.stringTests; half a module is ours, on the safe side.
 */
export function vocRange(voltsV: Volts, moduleV: Volts): { low_v: number; high_v: number } {
  const five = TEST_LIMITS.likeStrings * voltsV
  const off = moduleV === 0 ? five : Math.min(five, moduleV / 2)
  return { low_v: voltsV - off, high_v: voltsV + off }
}

/**
 * Open-circuit voltage of one module, V.
 *
 * @throws StageError when the module states no open-circuit voltage or no coefficient of it.
 * @source Module data sheet: Voc(T) = Voc (1 + beta (T - 25 C))
 * @example 11 * moduleVocV('m', { voc_v: 49.5, voc_temp_coeff_pct_per_c: -0.25, ... }, 48) // 513.2
 */
export function moduleVocV(id: string, module: PvModule, cellC: Celsius): number {
  if (module.voc_v === undefined) {
    throw new StageError(
      `equipment.modules.${id}.voc_v`,
      'the open-circuit voltage of the module is not stated',
      'take Voc from its data sheet',
    )
  }
  return module.voc_v + coefficientVPerC(id, module) * (cellC - 25)
}

function coefficientVPerC(id: string, module: PvModule): number {
  if (module.voc_temp_coeff_v_per_c !== undefined) return module.voc_temp_coeff_v_per_c
  if (module.voc_temp_coeff_pct_per_c === undefined) {
    throw new StageError(
      `equipment.modules.${id}.voc_temp_coeff_pct_per_c`,
      'the temperature coefficient of Voc is not stated',
      'take it from the data sheet of the module',
    )
  }
  return ((module.voc_v ?? 0) * module.voc_temp_coeff_pct_per_c) / 100
}
