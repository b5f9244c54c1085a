import { own } from '../values/index.js'
import type { AcModule, ArrayOfModules, Inverter, Project, PvModule } from './project-types.generated.js'

/** Begins the id of the inverter part of an AC module; no id of a person holds a colon. */
const AC_MODULE = 'ac_module:'

/** Whether an inverter is part of an AC module, which is bought, mounted and listed as one. */
export const isAcModule = (inverterId: string): boolean => inverterId.startsWith(AC_MODULE)

/** Path of what a person states of an inverter, which may be the AC side of a module. */
export const inverterPath = (inverterId: string): string =>
  isAcModule(inverterId)
    ? `equipment.modules.${inverterId.slice(AC_MODULE.length)}.ac_module`
    : `equipment.inverters.${inverterId}`

/**
 * The project with the inverter part of each AC module as a module-level inverter behind it, so that every trade finds
 * one there. An array that names an inverter or strings stays as it is.
 */
export function withAcModules(project: Project): Project {
  const { modules } = project.equipment
  const inverters: Record<string, Inverter> = {}
  const arrays = Object.entries(project.arrays).map(([id, array]): [string, ArrayOfModules] => {
    const module = own(modules, array.module)
    if (module?.ac_module === undefined || array.inverter !== undefined || array.strings !== undefined)
      return [id, array]
    const inverter = `${AC_MODULE}${array.module}`
    inverters[inverter] = inverterPart(module.name ?? array.module, module, module.ac_module)
    return [id, { ...array, inverter }]
  })
  if (Object.keys(inverters).length === 0) return project
  return {
    ...project,
    arrays: Object.fromEntries(arrays),
    equipment: { ...project.equipment, inverters: { ...project.equipment.inverters, ...inverters } },
  }
}

/** The AC side as an inverter; it weighs nothing by itself, as the module is weighed with it. */
function inverterPart(name: string, module: PvModule, side: AcModule): Inverter {
  return {
    ...side,
    name: `${name} (AC module)`,
    kind: 'module_level',
    weight_lb: 0,
    ...(module.sheet === undefined ? {} : { sheet: module.sheet }),
  }
}
