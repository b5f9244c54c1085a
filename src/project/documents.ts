import type { Project, ProjectDocument } from './project-types.generated.js'

/** A document of the person as the project states it: a bare path, or more about it. */
export interface StatedDocument {
  readonly file: string
  readonly id?: string | undefined
  readonly title?: string | undefined
  /** Year-month-day. */
  readonly date?: string | undefined
  readonly kind?: ProjectDocument['kind'] | undefined
  readonly items?: readonly string[] | undefined
}

/** The documents of a project in the order of the file. */
export function documentsOf(project: Pick<Project, 'documents'>): StatedDocument[] {
  return (project.documents ?? []).map((one) => (typeof one === 'string' ? { file: one } : one))
}

/** Title and date of a document as they are printed. */
export function documentName({ file, title, date }: StatedDocument): string {
  return [title ?? file, ...(date === undefined ? [] : [date])].join(', ')
}
