import type { Finding } from '../../worksheet/index.js'
import type { ReportOptions } from '../options.js'

/** Whether a paper is wanted as PDF: `--out` without the name of another form. */
export function isPdf({ out, json, csv, markdown, showWork }: ReportOptions): boolean {
  return out !== undefined && [json, csv, markdown, showWork].every((each) => each !== true)
}

/**
 * What stands beside a written paper: whether a check fails, and the findings as lines.
 *
 * @param onPaper Id of findings that the paper itself marks line by line.
 */
export function told(
  findings: readonly Finding[],
  onPaper = '',
): { readonly failed: boolean; readonly notes: readonly string[] } {
  const shown = findings.filter(
    (finding) => finding.severity !== 'note' && finding.id !== onPaper && !isUnconfirmed(finding),
  )
  const lines = shown.map(
    ({ severity, message, where }) => `${severity}: ${where === '' ? '' : `${where}: `}${message}`,
  )
  return { failed: shown.some(({ severity }) => severity === 'error'), notes: [...lines, ...draftNotes(findings)] }
}

// The drawings know it too; to load them for it takes longer than to start.
const isUnconfirmed = ({ id }: Finding): boolean => id.startsWith('project.made-up')

/** That a paper is stamped DRAFT, in one line: the paper itself lists why. */
export function draftNotes(findings: readonly Finding[]): string[] {
  if (!findings.some(isUnconfirmed)) return []
  return [
    'it is a DRAFT, stamped so on every page, as it rests on made-up values: the last page and check-project list them; not to be handed over, signed or filed',
  ]
}
