import type { Finding } from '../../worksheet/index.js'
import type { ReportOptions } from '../options.js'

/** Whether a paper is wanted as PDF: `--out` without the name of another form. */
export function isPdf({ out, json, csv, markdown, showWork }: ReportOptions): boolean {
  return out !== undefined && [json, csv, markdown, showWork].every((each) => each !== true)
}

/** What stands beside a written paper: whether a check fails, and the findings as lines. */
export function told(findings: readonly Finding[]): { readonly failed: boolean; readonly notes: readonly string[] } {
  const shown = findings.filter(({ severity }) => severity !== 'note')
  const lines = shown.map(({ severity, message, where }) => `${severity}: ${where === '' ? '' : `${where}: `}${message}`)
  return { failed: shown.some(({ severity }) => severity === 'error'), notes: lines }
}
