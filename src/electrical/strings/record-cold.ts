import type { PvModule } from '../../project/index.js'
import type { Celsius, Volts } from '../../values/index.js'
import { practice, type Job } from '../system/index.js'
import type { ColdVoltage } from './cold-voltage.js'
import type { StringLimits } from './string-limits.js'

/** What the factor on the open-circuit voltage comes from: the maker's coefficient, written out, or a row of the code table. */
export function recordColdFactor(
  job: Job,
  id: string,
  { module, sheet, lowC }: { readonly module: PvModule; readonly sheet: string; readonly lowC: Celsius },
  cold: ColdVoltage,
): void {
  const temperature = { symbol: 'T_min', value: lowC, unit: 'deg C', from: 'design temperature' }
  const inVolts = module.voc_temp_coeff_v_per_c
  // Warmer than 25 deg C never lowers the voltage that is designed for.
  const below = lowC > 25 ? 'min(0, T_min - 25)' : '(T_min - 25)'
  const base = {
    id: `wire.string.${id}.voc-factor`,
    says: `Factor on the open-circuit voltage at the lowest expected ambient, by the ${cold.method}`,
    result: { symbol: 'factor', value: cold.factor, unit: '' },
    source: job.nec('maxDcVoltage'),
  }
  if (cold.method === 'code table')
    job.worksheet.note({
      ...base,
      formula: 'factor from the row of the table at or below T_min',
      inputs: [temperature],
    })
  else if (inVolts !== undefined)
    job.worksheet.note({
      ...base,
      formula: `factor = 1 + b / V_oc x ${below}`,
      inputs: [
        { symbol: 'b', value: inVolts, unit: 'V/C', from: `${sheet}.voc_temp_coeff_v_per_c` },
        { symbol: 'V_oc', value: module.voc_v ?? 0, unit: 'V', from: `${sheet}.voc_v` },
        temperature,
      ],
    })
  else
    job.worksheet.note({
      ...base,
      formula: `factor = 1 + beta x ${below}`,
      inputs: [
        {
          symbol: 'beta',
          value: module.voc_temp_coeff_pct_per_c ?? 0,
          unit: '%/C',
          from: `${sheet}.voc_temp_coeff_pct_per_c`,
        },
        temperature,
      ],
    })
}

/** The hottest cells: hot air and what the sun adds. */
export function recordCellTemperature(job: Job, id: string, airC: Celsius, cellC: Celsius): void {
  job.worksheet.note({
    id: `wire.string.${id}.cell`,
    says: 'Hottest cells: the hot design temperature and the rise of the cells in full sun',
    formula: 'T_cell = T_hot + T_rise',
    inputs: [
      { symbol: 'T_hot', value: airC, unit: 'deg C', from: 'hot design temperature' },
      { symbol: 'T_rise', value: cellC - airC, unit: 'K', from: 'electrical.hot_cell_rise_c' },
    ],
    result: { symbol: 'T_cell', value: cellC, unit: 'deg C' },
    source: practice('nominal operating cell temperature of the data sheet'),
  })
}

/** Most and fewest modules in series, each written out. */
export function recordMostAndLeast(
  job: Job,
  id: string,
  v: {
    readonly limitV: Volts
    readonly windowV: Volts
    readonly coldModuleV: Volts
    readonly hotModuleV: Volts
  },
  { mostModules, leastModules }: StringLimits,
): void {
  job.worksheet.note({
    id: `wire.string.${id}.most`,
    says: 'Most modules in series: the limit over the voltage of one module in the cold',
    formula: 'n_most = floor(V_limit / V_cold1)',
    inputs: [
      { symbol: 'V_limit', value: v.limitV, unit: 'V', from: 'lowest of dwelling, module and inverter' },
      { symbol: 'V_cold1', value: v.coldModuleV, unit: 'V', from: 'one module, as the string' },
    ],
    result: { symbol: 'n_most', value: mostModules, unit: '' },
    source: job.nec('maxDcVoltage'),
  })
  job.worksheet.note({
    id: `wire.string.${id}.least`,
    says: 'Fewest modules in series: the lower end of the tracking range over the voltage of one module in the heat',
    formula: 'n_least = max(1, ceil(V_window / V_hot1))',
    inputs: [
      { symbol: 'V_window', value: v.windowV, unit: 'V', from: 'lower end of the tracking range' },
      { symbol: 'V_hot1', value: v.hotModuleV, unit: 'V', from: 'one module, as the string' },
    ],
    result: { symbol: 'n_least', value: leastModules, unit: '' },
    source: job.nec('listedEquipment'),
  })
}
