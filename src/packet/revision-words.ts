import { sheetsGone, type PacketRecord, type Sheet, type SheetChange } from '../drawings/index.js'
import type { Project } from '../project/index.js'
import { StageError } from '../worksheet/index.js'

/** Mark of the issue that a project is at; '-' while it states none. */
export function revisionOf({ document }: Project): string {
  return document?.revision ?? document?.revisions?.at(-1)?.number ?? '-'
}

/**
 * A changed packet is a new issue.
 *
 * @throws StageError when the project is at the issue that it is compared with, or lists no issues.
 */
export function checkRevision(project: Project, since: PacketRecord): void {
  const revision = revisionOf(project)
  if (project.document?.revisions === undefined)
    throw new StageError(
      'document.revisions',
      `the issues are not listed, and the earlier packet is of revision ${since.revision}`,
      'List the issues under document.revisions, the new one last.',
    )
  if (revision === since.revision)
    throw new StageError(
      'document.revisions',
      `the earlier packet is of revision ${since.revision}, and so is this project`,
      'Add the new issue at the end of document.revisions.',
    )
}

/** What the table of revisions on the cover says. */
export function issueTexts({ document }: Project): ReadonlySet<string> {
  const issues = document?.revisions ?? []
  return new Set([
    'Revisions',
    'Rev',
    'Date',
    'What',
    ...issues.flatMap(({ number, date, text }) => [number, date, text]),
  ])
}

/** One line a sheet: where it changed, what is new, what is gone. */
export function changeWords(since: PacketRecord, sheets: readonly Sheet[], changes: readonly SheetChange[]): string[] {
  const lines = changes.map(({ id, kind, places, gone }) => {
    if (kind === 'new') return `${id} is new since revision ${since.revision}`
    const clouds =
      places.length === 0
        ? 'no place can be told'
        : `clouds round ${places.length} ${places.length === 1 ? 'place' : 'places'}`
    return `${id} changed since revision ${since.revision}: ${clouds}${gone === 0 ? '' : `, ${gone} of its texts, figures and lines are gone or were replaced`}`
  })
  const gone = sheetsGone(since, sheets).map((id) => `${id} of revision ${since.revision} is no more`)
  return lines.length + gone.length === 0
    ? [`nothing changed on the sheets since revision ${since.revision}`]
    : [...lines, ...gone]
}
