import type { RoofProject } from '../project/index.js'
import { Worksheet } from '../worksheet/index.js'
import { arrangeModules } from './arrange-modules.js'
import type { ModulePlacement } from './placement.js'

/**
 * Where every module lies, array by array; an array without an arrangement has none. `arrangeModules` tells more.
 *
 * @param worksheet Takes over the findings and assumptions of the arrangement.
 * @throws StageError when a module has no dimensions.
 */
export function placeModules(project: RoofProject, worksheet: Worksheet = new Worksheet()): readonly ModulePlacement[] {
  const result = arrangeModules(project)
  worksheet.include(result)
  return result.values.modules
}
