import type { Project } from '../project/index.js'
import { arrangeModules, type Arrangement } from '../roof/index.js'
import type { Result } from '../worksheet/index.js'

const known = new WeakMap<Project, Result<Arrangement>>()

/** `arrangeModules`, worked out once for all stages of one project. @throws StageError as it does. */
export function arrangementOf(project: Project): Result<Arrangement> {
  const arrangement = known.get(project) ?? arrangeModules(project)
  known.set(project, arrangement)
  return arrangement
}
