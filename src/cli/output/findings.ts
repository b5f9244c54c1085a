import { formatSource, sortFindings, type Assumption, type Finding } from '../../worksheet/index.js'
import { formatSignificant, type Tone } from '../../report/index.js'

export const FINDING_TONES = { error: 'bad', warning: 'warn', note: 'dim' } as const satisfies Record<string, Tone>

/** A finding in words: the place is `file:line:column (path)` where it is known. */
export interface FindingLines {
  readonly severity: Finding['severity']
  readonly id: string
  readonly message: string
  readonly where: string | undefined
  readonly source: string | undefined
  readonly fix: string | undefined
}

export function findingLines(
  findings: readonly Finding[],
  locate: (path: string) => string | undefined,
): FindingLines[] {
  return sortFindings(findings).map((finding) => ({
    severity: finding.severity,
    id: finding.id,
    message: finding.message,
    where: placeOf(finding.where, locate),
    source: finding.source === undefined ? undefined : formatSource(finding.source),
    fix: finding.fix,
  }))
}

/** `project.yaml:12:7 (site.wind_mph)`, or the path alone, or undefined for ''. */
export function placeOf(path: string, locate: (path: string) => string | undefined): string | undefined {
  if (path === '') return undefined
  const place = locate(path)
  return place === undefined ? path : `${place} (${path})`
}

/** `losses.unequal_modules_pct = 1 %: no measurement is stated [source]` */
export function assumptionLine(assumption: Assumption): string {
  const value = typeof assumption.value === 'number' ? formatSignificant(assumption.value) : assumption.value
  const unit = assumption.unit === '' ? '' : ` ${assumption.unit}`
  return `${assumption.path} = ${value}${unit}: ${assumption.why} [${formatSource(assumption.source)}]`
}

/** `2 errors, 1 warning` in the order of severity; `nothing found` when empty. */
export function countFindings(findings: readonly Finding[]): string {
  const parts = (['error', 'warning', 'note'] as const).flatMap((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`]
  })
  return parts.length === 0 ? 'nothing found' : parts.join(', ')
}
