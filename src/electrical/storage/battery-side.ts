import { StageError } from '../../worksheet/index.js'
import type { Amperes } from '../../values/index.js'
import type { Job } from '../system/index.js'
import { storageSection } from '../../tables/nec/index.js'
import type { StorageSystem } from './storage-unit.js'

/**
 * Current between battery and inverter at rated power and lowest battery voltage.
 *
 * @param inverterKw Rated output of the inverter, kW.
 * @param efficiencyPct Efficiency of the inverter, percent.
 * @param lowV Lowest battery voltage, V.
 * @returns A.
 * @source NEC 706.20(A)(3), 2017 read: continuous input current at rated power and lowest input voltage
 */
export function batterySideA(inverterKw: number, efficiencyPct: number, lowV: number): Amperes {
  return (inverterKw * 1000) / ((efficiencyPct / 100) * lowV)
}

/** Current of the wired DC circuit of a battery, and what it follows from where its sheet does not state it. */
export interface BatteryCurrent {
  readonly eachA: Amperes
  readonly from: string
  readonly terms?: { readonly kw: number; readonly pct: number; readonly lowV: number }
}

/**
 * The current of the wired DC circuit of a battery: as its sheet states it, else reckoned.
 *
 * @returns undefined where battery and inverter are one listed unit.
 * @throws StageError when a DC-coupled unit does not state what the current follows from.
 */
export function batteryCurrent({ unit, unitWhere }: StorageSystem): BatteryCurrent | undefined {
  const where = `${unitWhere}.battery_side`
  const side = unit.battery_side
  if (side === undefined) {
    if (unit.coupling === 'ac') return undefined
    throw new StageError(
      where,
      'the DC circuit between battery and inverter of a DC-coupled unit is not stated',
      'State battery_side with current_a from the data sheet, or low_voltage_v and inverter_efficiency_pct',
    )
  }
  if (side.current_a !== undefined) return { eachA: side.current_a, from: `${where}.current_a` }
  const kw = side.inverter_kw ?? (unit.coupling === 'dc' ? unit.inverter_ac_kw : unit.discharge_kw)
  const pct = side.inverter_efficiency_pct ?? (unit.coupling === 'dc' ? unit.inverter_efficiency_pct : undefined)
  const missing =
    kw === undefined
      ? 'inverter_kw'
      : pct === undefined
        ? 'inverter_efficiency_pct'
        : side.low_voltage_v === undefined
          ? 'low_voltage_v'
          : undefined
  if (kw === undefined || pct === undefined || side.low_voltage_v === undefined)
    throw new StageError(
      `${where}.${missing ?? ''}`,
      'the current between battery and inverter cannot be reckoned without it',
      'State it, or current_a, from the data sheet of the inverter: its input current at rated power and lowest battery voltage',
    )
  return {
    eachA: batterySideA(kw, pct, side.low_voltage_v),
    from: 'wire.storage_dc.input',
    terms: { kw, pct, lowV: side.low_voltage_v },
  }
}

/** How the current between battery and inverter comes about, on the worksheet; nothing where its sheet states it. */
export function recordBatterySide(job: Job, system: StorageSystem): void {
  const battery = batteryCurrent(system)
  if (battery?.terms === undefined) return
  const { kw, pct, lowV } = battery.terms
  const where = `${system.unitWhere}.battery_side`
  job.worksheet.note({
    id: 'wire.storage_dc.input',
    says: `Input current of the inverter of ${system.unitId} at rated power and lowest battery voltage`,
    formula: 'I = 1000 x P / (eta x V)',
    inputs: [
      { symbol: 'P', value: kw, unit: 'kW', from: `${where}.inverter_kw, or the rated output` },
      { symbol: 'eta', value: pct, unit: '%', from: `${where}.inverter_efficiency_pct` },
      { symbol: 'V', value: lowV, unit: 'V', from: `${where}.low_voltage_v` },
    ],
    result: { symbol: 'I', value: battery.eachA, unit: 'A' },
    source: storageSection(job.edition, 'ratedCurrent'),
  })
}
