import type { RecordRow } from '../handover-values.js'
import type { StringFacts } from './string-facts.js'
import { openRow, readRow } from './verdict.js'

/** Polarity at the open ends. */
export function judgePolarity({ what, reading, where }: StringFacts): RecordRow {
  const row = openRow(what, 'as marked, at both ends', 'right', `${where}.polarity`)
  if (reading.polarity === undefined) return row
  return reading.polarity === 'right'
    ? readRow(row, 'right', 'pass')
    : readRow(row, 'REVERSED', 'fail', 'nothing is joined; found and put right first')
}
