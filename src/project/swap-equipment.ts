import { isAcModule, withAcModules } from './ac-modules.js'
import type { Inverter, Project, PvModule } from './project-types.generated.js'
import { checkRules } from './rules/index.js'
import { formatPath } from './path.js'

/** A module or an inverter that a project could have instead of its own. */
export type Candidate =
  | { readonly kind: 'module'; readonly id: string; readonly values: PvModule }
  | { readonly kind: 'inverter'; readonly id: string; readonly values: Inverter }

/** The project with the candidate in all places where it has one of its kind, or why it has none. */
export type Swapped = { readonly project: Project } | { readonly reasons: readonly string[] }

/**
 * Puts a candidate into a project, in the place of every module, of every module-level inverter, or of every string
 * inverter, and looks at the rules of the file again.
 */
export function swapEquipment(project: Project, candidate: Candidate): Swapped {
  const reason = candidate.kind === 'module' ? moduleMisfit(project, candidate) : inverterMisfit(project, candidate)
  if (reason !== undefined) return { reasons: [reason] }
  const swapped = candidate.kind === 'module' ? withModule(project, candidate) : withInverter(project, candidate)
  const broken = checkRules(swapped).map(({ segments, message }) => `${formatPath(segments)}: ${message}`)
  return broken.length > 0 ? { reasons: broken } : { project: withAcModules(swapped) }
}

type Module = Extract<Candidate, { readonly kind: 'module' }>
type OneInverter = Extract<Candidate, { readonly kind: 'inverter' }>

function moduleMisfit({ arrays }: Project, { values }: Module): string | undefined {
  const hasAcModules = Object.values(arrays).some(({ inverter }) => inverter !== undefined && isAcModule(inverter))
  const hasStrings = Object.values(arrays).some(({ strings }) => strings !== undefined)
  if (values.ac_module === undefined && hasAcModules) return 'the arrays have AC modules, and this one has no inverter'
  if (values.ac_module !== undefined && hasStrings) return 'the arrays have strings, and this is an AC module'
  return undefined
}

function inverterMisfit({ arrays, inverter_units: units = {} }: Project, { values }: OneInverter): string | undefined {
  const own = Object.values(arrays).flatMap(({ inverter }) => (inverter === undefined ? [] : [inverter]))
  if (own.length > 0 && own.every(isAcModule)) return 'the arrays have AC modules, which bring their inverters'
  if (values.kind === 'module_level' && own.length === 0)
    return 'the arrays have strings, and this is a module-level inverter'
  if (values.kind === 'string' && Object.keys(units).length === 0)
    return 'the arrays have module-level inverters, and this is a string inverter: it needs strings and inverter_units'
  return undefined
}

function withModule(project: Project, { id, values }: Module): Project {
  const arrays = Object.entries(project.arrays).map(([name, { inverter, ...array }]) => {
    const keeps = inverter !== undefined && !isAcModule(inverter) && values.ac_module === undefined
    return [name, { ...array, module: id, ...(keeps ? { inverter } : {}) }] as const
  })
  const modules = { ...project.equipment.modules, [id]: values }
  const inverters = Object.entries(project.equipment.inverters ?? {}).filter(([name]) => !isAcModule(name))
  return {
    ...project,
    arrays: Object.fromEntries(arrays),
    equipment: { ...project.equipment, modules, inverters: Object.fromEntries(inverters) },
  }
}

function withInverter(project: Project, { id, values }: OneInverter): Project {
  const inverters = { ...project.equipment.inverters, [id]: values }
  const swapped = { ...project, equipment: { ...project.equipment, inverters } }
  if (values.kind === 'string') {
    const units = Object.entries(project.inverter_units ?? {}).map(([name, unit]) => [name, { ...unit, inverter: id }])
    return { ...swapped, inverter_units: Object.fromEntries(units) as NonNullable<Project['inverter_units']> }
  }
  const arrays = Object.entries(project.arrays).map(([name, array]) => [
    name,
    array.inverter === undefined || isAcModule(array.inverter) ? array : { ...array, inverter: id },
  ])
  return { ...swapped, arrays: Object.fromEntries(arrays) as Project['arrays'] }
}
