import type { ArrayDc } from './array-dc.js'
import type { YieldRun } from './run-yield.js'
import { systemAc, type SystemAc } from './system-ac.js'

/**
 * AC side of an estimate with only some of its modules, under the same inverters: each runs at the load that is left, so
 * that efficiency, clipping and night consumption are those of the smaller system.
 *
 * @param kept Ids of the modules, as in `by_module`.
 */
export function partOfSystem(run: YieldRun, kept: ReadonlySet<string>): SystemAc {
  const arrays = run.arrays.map((array) => partOfArray(array, kept)).filter((array) => array.plan.modules.length > 0)
  return systemAc(run.steps, arrays, run.conversion.inverters, run.conversion.settings, run.conversion.losses)
}

function partOfArray(array: ArrayDc, kept: ReadonlySet<string>): ArrayDc {
  const numbers = new Map<number, number>()
  const modules = array.plan.modules.filter((module, index) => {
    if (!kept.has(module.id)) return false
    numbers.set(index, numbers.size)
    return true
  })
  const groups = array.groups
    .map((group) => ({ ...group, members: group.members.flatMap((member) => numbers.get(member) ?? []) }))
    .filter((group) => group.members.length > 0)
  return { ...array, plan: { ...array.plan, modules }, groups }
}
