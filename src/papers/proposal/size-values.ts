import { ratedAcKw } from '../../roof/index.js'
import { listModuleGroups, type Project } from '../../project/index.js'
import { own } from '../../values/index.js'
import { downTo } from './cautious.js'
import type { SizeValues } from './proposal-values.js'

/** How large the system is, and its modules and inverters by name. */
export function sizeValues(project: Project, ratedKw: number): SizeValues {
  const modules = new Map<string, number>()
  const inverters = new Map<string, number>()
  const units = new Set<string>()
  const add = (to: Map<string, number>, name: string, count: number) => to.set(name, (to.get(name) ?? 0) + count)
  for (const { module, modules: count, array, conversion } of listModuleGroups(project)) {
    add(modules, module.name ?? array.module, count)
    if (conversion.kind === 'module_level') add(inverters, conversion.inverter.name ?? conversion.inverterId, count)
    else
      for (const { unitId, inverter, inverterId } of conversion.strings) {
        if (!units.has(unitId)) add(inverters, inverter.name ?? inverterId, 1)
        units.add(unitId)
      }
  }
  const rows = (kind: SizeValues['equipment'][number]['kind'], counts: Map<string, number>) =>
    [...counts].map(([name, count]) => ({ kind, name, count }))
  return {
    dc_kw: downTo(0.01, ratedKw),
    ac_kw: downTo(0.01, ratedAcKw(project)),
    modules: [...modules.values()].reduce((sum, count) => sum + count, 0),
    equipment: [...rows('module', modules), ...rows('inverter', inverters), ...storageRow(project)],
  }
}

/** The storage units with their nameplate energy. */
function storageRow({ storage, equipment }: Project): SizeValues['equipment'] {
  const unit = own(equipment.storage_units, storage?.unit)
  if (storage === undefined || unit === undefined || storage.count === 0) return []
  const energy = unit.nameplate_kwh === undefined ? '' : `, ${unit.nameplate_kwh} kWh`
  return [{ kind: 'storage', name: `${unit.name ?? storage.unit}${energy}`, count: storage.count }]
}
