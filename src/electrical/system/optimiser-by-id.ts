import type { Optimiser } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import type { Job } from './job.js'

/** An optimiser of the project, looked up by id. */
export function optimiserById(job: Job, id: string, where: string): Optimiser {
  const { optimisers } = job.project.equipment
  const optimiser = own(optimisers, id)
  if (optimiser !== undefined) return optimiser
  throw new StageError(
    where,
    `there is no optimiser '${id}' under equipment.optimisers`,
    `Use one of: ${Object.keys(optimisers ?? {}).join(', ') || '(none is stated)'}`,
  )
}
