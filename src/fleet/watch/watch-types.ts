import type { ReviewValues } from '../../fieldwork/index.js'
import type { Finding } from '../../worksheet/index.js'

/** A house that is watched, and where its readings are. */
export interface WatchedHouse {
  readonly name: string
  readonly projectPath: string
  readonly productionPath: string
}

/** How a house does, a line each. */
export interface WatchLine {
  readonly format: 'gablewatt-watch/1'
  readonly house: string
  /** `ok`, `failed` (a sign that is sure, or below the share asked for), or why nothing could be said. */
  readonly status: 'ok' | 'failed' | 'invalid' | 'unreadable'
  readonly from: string | null
  readonly to: string | null
  readonly performance_pct: number | null
  readonly performance_low_pct: number | null
  readonly performance_high_pct: number | null
  readonly signs: ReviewValues['signs']
  /** Mean of the next twelve months, as it is now against mended. */
  readonly lost_kwh_per_month: number | null
  readonly lost_usd_per_month: number | null
  /** Errors, or what keeps the house from being judged. */
  readonly messages: readonly string[]
}

/** A line with the findings behind it. */
export interface WatchedOutcome {
  readonly line: WatchLine
  readonly findings: readonly Finding[]
}

/** Exit code of a house by itself; the worst is that of the run. */
export const EXIT_OF_WATCH: Readonly<Record<WatchLine['status'], 0 | 1 | 2 | 3>> = {
  ok: 0,
  failed: 1,
  invalid: 2,
  unreadable: 3,
}
