import type { Project } from '../project/index.js'
import type { Finding } from '../worksheet/index.js'
import type { Scene } from './build-scene.js'
export function sceneFindings(_project: Project, _scene: Scene): Finding[] {
  return []
}
