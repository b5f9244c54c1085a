import { listModuleGroups, type Project } from '../project/index.js'
import type { Kilowatts } from '../values/index.js'
import { countFitted } from './count-fitted.js'

/** Rated AC output of all inverters, kW. */
export function ratedAcKw(project: Project): Kilowatts {
  const units = new Map<string, number>()
  let watts = 0
  for (const group of listModuleGroups(countFitted(project))) {
    if (group.conversion.kind === 'module_level') watts += group.modules * group.conversion.inverter.ac_power_w
    else for (const string of group.conversion.strings) units.set(string.unitId, string.inverter.ac_power_w)
  }
  for (const unitWatts of units.values()) watts += unitWatts
  return watts / 1000
}
