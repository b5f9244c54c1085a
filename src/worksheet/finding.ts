import type { Source } from './source.js'

/** Something the person must know. An `error` means that the design fails a check (exit code 1). */
export interface Finding {
  readonly severity: 'error' | 'warning' | 'note'
  /** Stable, dotted, lower case with hyphens: `wire.ocpd-above-maximum`. `explain` looks it up. */
  readonly id: string
  /** One sentence with the numbers and their units, no full stop. */
  readonly message: string
  /** Dotted path into project.yaml, or '' when no single place is to blame. */
  readonly where: string
  readonly source?: Source
  /** What the person can do about it, one sentence. */
  readonly fix?: string
}

const RANK = { error: 0, warning: 1, note: 2 } as const

/** Errors first, then warnings, then notes; the order of discovery is kept within each. */
export function sortFindings(findings: readonly Finding[]): Finding[] {
  return findings.toSorted((a, b) => RANK[a.severity] - RANK[b.severity])
}
