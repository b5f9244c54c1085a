import { statedModuleCount } from '../project/facts.js'
import type { Project } from '../project/index.js'
import { StageError } from '../worksheet/index.js'
import { own } from '../values/index.js'
import { placeModules } from './place-modules.js'

/**
 * States the number of modules of arrays that are fitted without one: as many as the roof takes. Everything after the
 * roof works with a number; a project that states its numbers comes back as it is.
 *
 * @throws StageError when an array has no room for a single module.
 */
export function countFitted(project: Project): Project {
  const open = Object.keys(project.arrays).filter((id) => {
    const array = own(project.arrays, id)
    if (array === undefined || statedModuleCount(array) !== undefined) return false
    return array.arrangement === 'fit' || (typeof array.arrangement === 'object' && 'fit' in array.arrangement)
  })
  if (open.length === 0) return project
  const placed = placeModules(project)
  const arrays = { ...project.arrays }
  for (const id of open) {
    const array = own(project.arrays, id)
    const modules = placed.filter((module) => module.array === id).length
    if (array === undefined) continue
    if (modules === 0) {
      throw new StageError(
        `arrays.${id}.arrangement`,
        `there is no room for a module of array '${id}' on roof plane '${array.roof_plane}'`,
        'Look at outline, clearances, obstructions, pathways, and the rafters with the spans and free ends of the rail; or place blocks yourself.',
      )
    }
    arrays[id] = { ...array, modules }
  }
  return { ...project, arrays }
}
