import type { Project } from '../project/index.js'
import type { Finding } from '../worksheet/index.js'
import type { Scene } from './build-scene.js'
import { floatingThings, hiddenThings, modulesInside, planesInside } from './find-inside.js'
import { besideBuildings, lowBuildings, planesApart, withoutNorth } from './find-misplaced.js'

/** What does not fit together in the house as it is described: what meets, hides, floats, or stands nowhere. */
export function sceneFindings(project: Project, scene: Scene): Finding[] {
  return [
    ...planesApart(project, scene),
    ...withoutNorth(project, scene),
    ...modulesInside(scene),
    ...planesInside(project, scene),
    ...hiddenThings(scene),
    ...floatingThings(project),
    ...besideBuildings(project, scene),
    ...lowBuildings(project, scene),
  ]
}
