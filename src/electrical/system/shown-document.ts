import { documentsOf, type StatedDocument } from '../../project/facts.js'
import type { Job } from './job.js'

/** A document of the project by its id, when it has the title and date that a sheet prints; a name alone shows nothing. */
export function shownDocument(job: Job, id: string | undefined): StatedDocument | undefined {
  if (id === undefined) return undefined
  return documentsOf(job.project).find((each) => each.id === id && each.title !== undefined && each.date !== undefined)
}
