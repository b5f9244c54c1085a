import { isAcModule, listModuleGroups, type Inverter, type Project } from '../project/index.js'
import { own } from '../values/index.js'

/** What forms ask for and no single key of the project states, by its name after `totals.`. */
export const TOTALS = {
  module_count: {
    says: 'number of modules',
    of: (project) => sum(listModuleGroups(project).map((one) => one.modules)),
  },
  total_dc_kw: {
    says: 'rated power of all modules, kW',
    of: (project) => sum(listModuleGroups(project).map(({ module, modules }) => module.pmax_w * modules)) / 1000,
  },
  inverter_count: {
    says: 'number of inverters, those of AC modules among them',
    of: (project) => sum(invertersOf(project).map(({ count }) => count)),
  },
  total_ac_kw: {
    says: 'rated AC power of all inverters, kW',
    of: (project) => sum(invertersOf(project).map(({ inverter, count }) => inverter.ac_power_w * count)) / 1000,
  },
  module_list: {
    says: 'number and name of each kind of module, as a text',
    of: (project) =>
      counted(listModuleGroups(project).map(({ array, module, modules }) => [module.name ?? array.module, modules])),
  },
  inverter_list: {
    says: 'number and name of each kind of inverter, as a text; nothing for AC modules alone',
    of: (project) =>
      counted(
        invertersOf(project).flatMap(({ id, inverter, count }) =>
          isAcModule(id) ? [] : [[inverter.name ?? id, count] as const],
        ),
      ),
  },
} as const satisfies Record<string, Total>

interface Total {
  readonly says: string
  /** Undefined when the project has none. */
  readonly of: (project: Project) => number | string | undefined
}

/** Inverters of the project: one behind each module, and the units of strings. */
export function invertersOf(
  project: Project,
): { readonly id: string; readonly inverter: Inverter; readonly count: number }[] {
  const behindModules = listModuleGroups(project).flatMap(({ conversion, modules }) =>
    conversion.kind === 'module_level'
      ? [{ id: conversion.inverterId, inverter: conversion.inverter, count: modules }]
      : [],
  )
  const units = Object.values(project.inverter_units ?? {}).flatMap(({ inverter: id }) => {
    const inverter = own(project.equipment.inverters, id)
    return inverter === undefined ? [] : [{ id, inverter, count: 1 }]
  })
  return [...behindModules, ...units]
}

/** `14 x Module A, 6 x Module B`. */
export function counted(entries: readonly (readonly [name: string, count: number])[]): string | undefined {
  const counts = new Map<string, number>()
  for (const [name, count] of entries) counts.set(name, (counts.get(name) ?? 0) + count)
  return counts.size === 0 ? undefined : [...counts].map(([name, count]) => `${count} x ${name}`).join(', ')
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)
