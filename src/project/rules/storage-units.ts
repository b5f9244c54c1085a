import type { StorageUnit } from '../project-types.generated.js'
import type { Rule } from './rule.js'

type Say = (key: string, message: string, at?: 'key' | 'value' | 'parent') => void

/** Figures of the data sheet of a storage unit that cannot stand together. */
export const checkStorageUnits: Rule = (project, report) => {
  for (const [id, unit] of Object.entries(project.equipment.storage_units ?? {})) {
    const say: Say = (key, message, at) => {
      report(['equipment', 'storage_units', id, ...key.split('.')], message, at)
    }
    checkEfficiencies(unit, say)
    checkPowers(unit, say)
    const { warranty } = unit
    if (warranty?.throughput_mwh !== undefined && warranty.counts === undefined)
      say('warranty.counts', "missing; say what throughput_mwh counts, for example 'counts: discharge'", 'parent')
    if (warranty?.throughput_mwh === undefined && warranty?.counts !== undefined)
      say('warranty.counts', 'throughput_mwh is missing beside it; state it, or take this away', 'key')
  }
}

function checkEfficiencies(unit: StorageUnit, say: Say): void {
  const { round_trip_pct: both, charge_efficiency_pct: into, discharge_efficiency_pct: out, coupling } = unit
  if (both !== undefined && (into !== undefined || out !== undefined)) {
    const message =
      'charge_efficiency_pct or discharge_efficiency_pct stands beside it; keep the round trip, or the two ways'
    say('round_trip_pct', message, 'key')
  } else if (both !== undefined && coupling === 'dc') {
    const message =
      'with coupling dc the ways in and out lose differently; state charge_efficiency_pct and discharge_efficiency_pct'
    say('round_trip_pct', message, 'key')
  } else if (both === undefined && (into === undefined) !== (out === undefined)) {
    const missing = into === undefined ? 'charge_efficiency_pct' : 'discharge_efficiency_pct'
    say(missing, 'missing; the ways in and out are stated together, or round_trip_pct in their place', 'parent')
  }
  for (const key of ['inverter_efficiency_pct', 'inverter_ac_kw'] as const) {
    if (coupling === 'dc' && unit[key] === undefined)
      say(key, 'missing; with coupling dc modules and battery share an inverter, whose values are needed', 'parent')
    if (coupling === 'ac' && unit[key] !== undefined)
      say(key, 'is for coupling dc; a unit of coupling ac has its inverter within its efficiencies', 'key')
  }
}

function checkPowers(unit: StorageUnit, say: Say): void {
  const { usable_kwh: usable, nameplate_kwh: nameplate, discharge_kw: out, surge_kw: surge } = unit
  if (nameplate !== undefined && nameplate < usable)
    say('nameplate_kwh', `${nameplate} kWh is less than usable_kwh ${usable} kWh; are the two swapped?`)
  if (surge !== undefined && surge < out)
    say('surge_kw', `${surge} kW is less than discharge_kw ${out} kW; are the two swapped?`)
}
