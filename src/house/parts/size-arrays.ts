import { moduleCountOf, type ArrayOfModules, type Project } from '../../project/facts.js'
import { StageError } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import { countFitted } from '../../roof/index.js'

/** Whether the program places the modules of an array and may choose how many. */
function isFree({ arrangement, strings }: ArrayOfModules): boolean {
  const fitted = arrangement === 'fit' || (typeof arrangement === 'object' && 'fit' in arrangement)
  return fitted && strings === undefined
}

/** @throws StageError when an array has places or strings of its own, so that nobody said which modules a size leaves out. */
export function checkSizes(project: Project): void {
  const fixed = Object.entries(project.arrays).find(([, array]) => !isFree(array))
  if (fixed === undefined) return
  const [id, { strings }] = fixed
  const why = strings === undefined ? 'its modules were placed by hand' : 'it has strings'
  throw new StageError(
    `arrays.${id}`,
    `sizes cannot be compared, because ${why}, and it is not said which modules a smaller size leaves out`,
    "State arrangement: fit for it, or leave --sizes away; 'gablewatt choose-size' works out sizes of such a roof.",
  )
}

/**
 * The project with so many modules in all, those arrays filled first whose modules give most.
 *
 * @param order Ids of the arrays, the best first.
 * @returns Undefined when the roof takes fewer.
 */
export function sized(project: Project, size: number, order: readonly string[]): Project | undefined {
  const open = Object.entries(project.arrays).map(([id, array]): [string, ArrayOfModules] => {
    const uncounted = { ...array }
    delete uncounted.modules
    return [id, uncounted]
  })
  const full = countFitted({ ...project, arrays: Object.fromEntries(open) })
  let left = size
  const chosen: [string, ArrayOfModules][] = []
  for (const id of order) {
    const array = own(full.arrays, id)
    if (array === undefined) continue
    const modules = Math.min(left, moduleCountOf(array))
    left -= modules
    if (modules > 0) chosen.push([id, { ...array, modules }])
  }
  return left > 0 ? undefined : { ...project, arrays: Object.fromEntries(chosen) }
}
