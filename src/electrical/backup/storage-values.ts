import { storageSection } from '../../tables/nec/index.js'
import {
  EACH_PLACE_KWH,
  groupWords,
  storageCodeRules,
  storageLimits,
  storagePlaceRules,
} from '../../tables/storage/index.js'
import type { Tree } from '../distribution/index.js'
import { energyByGroup, placeJobOf, type CheckedStorage, type StorageCheck } from '../storage/index.js'
import { storageRulesOf } from '../storage/index.js'
import type { CircuitValues, Job, StorageCheckValues, StorageValues } from '../system/index.js'
import type { CheckedBackup } from './check-backup.js'
import { deviceAheadA } from './island.js'

/** The storage as values of the result. */
export function storageValues(
  job: Job,
  { system, circuits, checks }: CheckedStorage,
  backup: CheckedBackup,
  tree: Tree,
  values: readonly CircuitValues[],
): StorageValues {
  const { unit, unitId, count, name, stated } = system
  const { installation } = stated
  const place = placeJobOf(job, system)
  const limited = place.code === undefined || storageCodeRules[place.code].limits
  const ac = circuits.filter(({ kind }) => kind === 'ac_storage')
  const eachKwh = unit.nameplate_kwh
  return {
    unit: unitId,
    name,
    count,
    coupling: unit.coupling,
    output_kw: unit.discharge_kw * count,
    nameplate_kwh: eachKwh === undefined ? null : eachKwh * count,
    rated_output_a: unit.coupling === 'dc' ? null : (unit.rated_output_a ?? 0) * count,
    panel: ac[0]?.storage?.landing ?? null,
    circuits: values,
    disconnect: {
      at: installation?.disconnect_at ?? null,
      rating_a: installation?.disconnect?.rating_a ?? null,
      required_a:
        ac.length === 0
          ? null
          : values.reduce((sum, each) => sum + (each.kind === 'ac_storage' ? each.required_a : 0), 0),
      section: storageSection(job.edition, 'disconnect').place ?? '',
      outside: storageRulesOf(job).outside,
    },
    backup: backupValues(stated.backup, backup, tree),
    power_control:
      installation?.power_control === undefined || tree.powerControl === undefined
        ? null
        : {
            setting_a: tree.powerControl.settingA,
            panels: tree.powerControl.panels,
            counts: tree.powerControl.fault === undefined,
          },
    places: place.places.map(({ id, kind, units }) => ({
      id,
      location: storagePlaceRules[kind].words,
      units,
      nameplate_kwh: eachKwh === undefined ? null : eachKwh * units,
    })),
    energy: energyByGroup(place).map(({ group, energyKwh, limitKwh }) => ({
      group: groupWords[group],
      nameplate_kwh: energyKwh,
      limit_kwh: limitKwh,
    })),
    total_limit_kwh: limited ? (place.authorityTotalKwh ?? storageLimits.aggregate_whole_dwelling.value) : null,
    each_place_limit_kwh: limited ? EACH_PLACE_KWH : null,
    checks: [...checks, ...backup.checks].map(checkValues),
  }
}

function backupValues(
  stated: CheckedStorage['system']['stated']['backup'],
  { island }: CheckedBackup,
  tree: Tree,
): StorageValues['backup'] {
  if (stated === undefined || stated.kind === 'none' || island === undefined) return null
  return {
    kind: stated.kind,
    panel: island.panel.id,
    bus_a: island.panel.busA,
    main_a: deviceAheadA(tree, island.panel) ?? null,
    isolating_device_a: stated.isolating_device_a ?? null,
    isolating_device_listed: stated.isolating_device_listed ?? null,
    island_devices_a: island.devicesA,
  }
}

const checkValues = ({ id, verdict, says, where, source, value, limit, unit }: StorageCheck): StorageCheckValues => ({
  id,
  verdict,
  says,
  where,
  section: [source.document, source.edition, source.place].filter((part) => part !== undefined).join(' '),
  standing: source.standing,
  value: value ?? null,
  limit: limit ?? null,
  unit: unit ?? null,
})
