import type { RecordRow, Verdict } from '../handover-values.js'

/** A row that is still to be measured. */
export const openRow = (what: string, expected: string, limit: string, where: string): RecordRow => ({
  what,
  expected,
  limit,
  measured: null,
  verdict: 'open',
  why: '',
  where,
})

/** A row with its reading. */
export const readRow = (
  row: Pick<RecordRow, 'what' | 'expected' | 'limit' | 'where'>,
  measured: string,
  verdict: Verdict,
  why = '',
): RecordRow => ({ ...row, measured, verdict, why })

export const shown = (value: number, decimals: number, unit: string): string => `${value.toFixed(decimals)} ${unit}`

/** `-1.6 %` */
export const percent = (share: number): string => `${share < 0 ? '' : '+'}${(share * 100).toFixed(1)} %`
