import {
  EACH_PLACE_KWH,
  groupLimits,
  groupWords,
  storageCodeRules,
  storageLimits,
  storagePlaceRules,
  type StorageGroup,
} from '../../tables/storage/index.js'
import type { KilowattHours } from '../../values/index.js'
import type { PlaceJob } from './place-facts.js'
import { compareStated, type StorageCheck } from './storage-check.js'

/** Energy in a group of places, kWh. */
export interface GroupEnergy {
  readonly group: StorageGroup
  readonly energyKwh: KilowattHours
  readonly limitKwh: KilowattHours
}

/** Energy by group of places; empty where the energy of a unit is not stated. */
export function energyByGroup({ places, unitKwh }: PlaceJob): GroupEnergy[] {
  if (unitKwh === undefined) return []
  const units = new Map<StorageGroup, number>()
  for (const place of places) {
    const { group } = storagePlaceRules[place.kind]
    if (group !== undefined) units.set(group, (units.get(group) ?? 0) + place.units)
  }
  return [...units].map(([group, count]) => ({
    group,
    energyKwh: count * unitKwh,
    limitKwh: groupLimits[group].value,
  }))
}

/**
 * Energy of a unit, of each group of places and of the whole property, by nameplate.
 *
 * The whole is held against one cap, the safe side; by the other reading each group of places has its own.
 */
export function energyRules(job: PlaceJob): StorageCheck[] {
  const { code, unitKwh, unitKwhWhere, count, authorityTotalKwh } = job
  if (code !== undefined && !storageCodeRules[code].limits)
    return [
      {
        id: 'energy-not-ruled',
        where: 'storage.installation.place_code',
        says: `${code} has no limits of energy and distance for storage; a fire code that is adopted beside it may have them`,
        verdict: 'not_ruled',
        source: { document: code, place: storageCodeRules[code].place, standing: 'secondary' },
        fix: 'Ask the fire department whether IFC 2021 or NFPA 855 is in force, and state it as place_code',
      },
    ]
  const unit = storageLimits.unit_energy_max
  const total = storageLimits.aggregate_whole_dwelling
  const totalKwh = unitKwh === undefined ? undefined : count * unitKwh
  const limitKwh = authorityTotalKwh ?? total.value
  return [
    compareStated({
      id: 'unit-energy',
      where: unitKwhWhere,
      what: 'nameplate energy of one unit',
      value: unitKwh,
      limit: unit.value,
      unit: 'kWh',
      relation: '<=',
      source: unit.source,
      fix: 'Use smaller units; above the limit the rules for commercial storage hold. The energy stands on the nameplate; usable energy is smaller',
    }),
    ...energyByGroup(job).map(({ group, energyKwh }) =>
      compareStated({
        id: 'place-energy',
        where: 'storage.installation.places',
        what: `nameplate energy in ${groupWords[group]}`,
        value: energyKwh,
        limit: groupLimits[group].value,
        unit: 'kWh',
        relation: '<=',
        source: groupLimits[group].source,
        fix: 'Put units elsewhere, or use fewer',
      }),
    ),
    {
      ...compareStated({
        id: 'total-energy',
        where: 'storage.count',
        what: 'nameplate energy of all units',
        value: totalKwh,
        limit: limitKwh,
        unit: 'kWh',
        relation: '<=',
        source: authorityTotalKwh === undefined ? total.source : { document: 'project file', standing: 'project file' },
        fix: `Use fewer units, or ask the authority whether each kind of place has its own limit (${EACH_PLACE_KWH} kWh in all) and state authority_total_kwh`,
      }),
    },
  ]
}
