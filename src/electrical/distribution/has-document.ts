import { documentsOf } from '../../project/facts.js'
import type { Job } from '../system/index.js'

/** Whether an entry under documents has this id. */
export const hasDocument = (job: Job, id: string | undefined): boolean =>
  id !== undefined && documentsOf(job.project).some((document) => document.id === id)
