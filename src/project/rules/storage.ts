import { own } from '../../values/index.js'
import { didYouMean } from '../did-you-mean.js'
import type { Storage, StorageWindow } from '../project-types.generated.js'
import { listWords, showValue } from '../words.js'
import type { Report, Rule } from './rule.js'
import { checkStorageBackup } from './storage-backup.js'

/** What the battery of a project asks for has to exist and to fit together. */
export const checkStorage: Rule = ({ storage, equipment }, report) => {
  if (storage === undefined) return
  const units = equipment.storage_units ?? {}
  const unit = own(units, storage.unit)
  if (unit === undefined) {
    const ids = Object.keys(units)
    const near = didYouMean(storage.unit, ids)
    const there = ids.length === 0 ? '; nothing stands there' : `; known there: ${listWords(ids)}`
    const message = `no ${showValue(storage.unit)} under equipment.storage_units${near === '' ? there : near}`
    report(['storage', 'unit'], message)
  }
  const { reserve_pct: reserve = 0, start_pct: start } = storage
  if (start !== undefined && start < reserve)
    report(
      ['storage', 'start_pct'],
      `${start} % is below reserve_pct ${reserve} %, which is released in an outage only`,
    )
  if (storage.fade === 'stated' && unit !== undefined && unit.fade === undefined) {
    const message = `'stated' needs equipment.storage_units.${storage.unit}.fade; state its percents there`
    report(['storage', 'fade'], message)
  }
  if (storage.fade === 'cell_model' && storage.cell_temperature_c === undefined)
    report(
      ['storage', 'cell_temperature_c'],
      "missing; 'fade: cell_model' needs the mean temperature of the cells",
      'parent',
    )
  if (storage.fade === 'cell_model' && unit !== undefined && unit.chemistry !== 'lfp') {
    const message = `the model is one of lfp cells, and equipment.storage_units.${storage.unit}.chemistry is ${unit.chemistry ?? 'not stated'}; use warranty_line or stated`
    report(['storage', 'fade'], message)
  }
  if (storage.fade !== 'cell_model' && storage.cell_temperature_c !== undefined)
    report(
      ['storage', 'cell_temperature_c'],
      "is used with 'fade: cell_model' only; take it away, or state that",
      'key',
    )
  for (const key of ['outlets_240_v', 'multiwire_circuits', 'neutral_bus_a'] as const)
    if (storage.backup?.[key] !== undefined && unit !== undefined && unit.ac_voltage_v !== 120)
      report(
        ['storage', 'backup', key],
        `is for a unit of 120 V; equipment.storage_units.${storage.unit}.ac_voltage_v is ${unit.ac_voltage_v ?? 'not stated'}`,
        'key',
      )
  checkReplacement(storage, report)
  checkControl(storage, report)
  checkStorageBackup(storage, report)
}

function checkReplacement({ replacement, cost_usd_per_unit: each }: Storage, report: Report): void {
  if (replacement === undefined) return
  if (replacement.floor_pct === undefined && replacement.at_warranty_end !== true) {
    const message = "says not when; state floor_pct, or 'at_warranty_end: true'"
    report(['storage', 'replacement'], message, 'key')
  }
  if (replacement.usd === undefined && each === undefined)
    report(['storage', 'replacement', 'usd'], 'missing; state it, or storage.cost_usd_per_unit', 'parent')
}

function checkControl({ control = {} }: Storage, report: Report): void {
  const path = ['storage', 'control']
  const { charge_from: from = 'surplus', grid_charge_windows: charge, discharge_windows: discharge } = control
  if (charge !== undefined && from === 'surplus') {
    const message =
      "charge_from is surplus, so that these windows change nothing; state 'charge_from: any' or pv, or take them away"
    report([...path, 'grid_charge_windows'], message, 'key')
  }
  if (control.battery_export === true && discharge === undefined)
    report([...path, 'battery_export'], 'needs discharge_windows, the hours in which the battery may export')
  if (control.battery_export === true && control.export_cap_kw === 0)
    report([...path, 'battery_export'], 'export_cap_kw 0 lets nothing leave the house; keep one of the two')
  for (const [i, window] of (charge ?? []).entries()) {
    for (const [k, other] of (discharge ?? []).entries()) {
      const at = sharedHour(window, other)
      if (at === undefined) continue
      const message = `overlaps discharge_windows.${k}: both hold ${at}; a battery cannot charge and discharge in one hour`
      report([...path, 'grid_charge_windows', i], message)
    }
  }
  for (const [i, event] of (control.events ?? []).entries()) {
    if (event.to_hour > event.from_hour) continue
    const message = `${event.to_hour} is not after from_hour ${event.from_hour}; an event ends on its own day, at 24 at the latest`
    report([...path, 'events', i, 'to_hour'], message)
  }
}

const KINDS: Readonly<Record<StorageWindow['days'][number], readonly string[]>> = {
  every_day: ['weekdays', 'saturdays', 'sundays', 'holidays'],
  weekdays: ['weekdays'],
  weekends: ['saturdays', 'sundays'],
  saturdays: ['saturdays'],
  sundays: ['sundays'],
  holidays: ['holidays'],
}
const ALL_MONTHS = Array.from({ length: 12 }, (_, i) => i + 1)

/** An hour that two windows share, in words. */
function sharedHour(a: StorageWindow, b: StorageWindow): string | undefined {
  const month = (a.months ?? ALL_MONTHS).find((one) => (b.months ?? ALL_MONTHS).includes(one))
  const kindsOf = ({ days }: StorageWindow): string[] => days.flatMap((day) => KINDS[day])
  const kind = kindsOf(a).find((one) => kindsOf(b).includes(one))
  const hour = hoursOf(a).find((one) => hoursOf(b).includes(one))
  if (month === undefined || kind === undefined || hour === undefined) return undefined
  return `${hour}:00 on ${kind} of month ${month}`
}

function hoursOf({ from_hour: from, to_hour: to }: StorageWindow): number[] {
  return Array.from({ length: (to - from + 24) % 24 || 24 }, (_, i) => (from + i) % 24)
}
