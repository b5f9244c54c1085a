import { spaceText } from '../project/facts.js'
import type { SpaceProject } from '../project/index.js'
import { placeModules } from '../roof/index.js'
import { buildScene, type Scene } from '../scene/index.js'
import { Kept } from '../values/index.js'
import { planArray, type ArrayPlan } from './array-plan.js'

/** The house in space, and its arrays in the order of the file. */
export interface PlansInSpace {
  readonly scene: Scene
  readonly plans: readonly ArrayPlan[]
}

/** Houses of a fleet that stand alike share these, and with them what their modules see of the sky. */
const known = new Kept<PlansInSpace>(64)

/**
 * Puts the modules of all arrays in space.
 *
 * @param turned Array whose modules are only turned in thought, so that its rows do not shade each other.
 * @throws StageError as `placeModules`, `buildScene` and `planArray`.
 */
export function plansInSpace(project: SpaceProject, turned?: string): PlansInSpace {
  return known.of(JSON.stringify([spaceText(project), turned]), () => {
    const placements = placeModules(project)
    const scene = buildScene(project, placements, turned === undefined ? {} : { turned })
    const plans = Object.keys(project.arrays).map((id) =>
      planArray(
        project,
        id,
        placements.filter((placement) => placement.array === id),
        scene,
      ),
    )
    return { scene, plans }
  })
}
