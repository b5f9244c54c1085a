import { listModuleGroups, type Project } from '../../project/index.js'
import { countFitted } from '../../roof/index.js'
import type { SystemParts } from './signs/level-signs.js'

/** Inverters, strings and single modules with the share of the rated power that each carries. */
export function systemParts(project: Project): SystemParts {
  const units = new Map<string, number>()
  const strings: { name: string; watts: number }[] = []
  let [modules, watts] = [0, 0]
  for (const group of listModuleGroups(countFitted(project))) {
    modules += group.modules
    watts += group.modules * group.module.pmax_w
    if (group.conversion.kind === 'module_level') continue
    group.conversion.strings.forEach((string, at) => {
      const own = string.modules * group.module.pmax_w
      units.set(string.unitId, (units.get(string.unitId) ?? 0) + own)
      strings.push({ name: `string ${at + 1} of array ${group.id}`, watts: own })
    })
  }
  const parts = [...[...units].map(([id, own]) => ({ name: `inverter ${id}`, watts: own })), ...strings]
  return { modules, parts: parts.map(({ name, watts: own }) => ({ name, share: watts > 0 ? own / watts : 0 })) }
}
