import { listModuleGroups, type Project } from '../../project/index.js'
import { countFitted } from '../../roof/index.js'
import { own } from '../../values/index.js'
import type { PacketInput } from '../inputs.js'

/** Inverters of a system: behind modules, and those of strings. */
export function listedInverters({ project, arrangement }: PacketInput): {
  readonly module: number
  readonly string: number
} {
  let module = 0
  for (const group of listModuleGroups(countFitted(project))) {
    if (group.conversion.kind !== 'module_level') continue
    const placed = arrangement.values.modules.filter((each) => each.array === group.id).length
    module += placed === 0 ? group.modules : placed
  }
  return { module, string: Object.keys(project.inverter_units ?? {}).length }
}

/** Largest short-circuit current of a module that is used, A; undefined when a sheet does not state it. */
export function largestModuleIsc({ arrays, equipment }: Project): number | undefined {
  const currents = Object.values(arrays).map(({ module }) => own(equipment.modules, module))
  // An AC module has no direct current that leaves it.
  const used = currents.filter((module) => module?.ac_module === undefined)
  const stated = used.flatMap((module) => module?.isc_a ?? [])
  return stated.length < used.length || stated.length === 0 ? undefined : Math.max(...stated)
}
