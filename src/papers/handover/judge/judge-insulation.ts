import type { RecordRow } from '../handover-values.js'
import type { StringFacts } from './string-facts.js'
import { openRow, readRow, shown } from './verdict.js'

/**
 * Insulation resistance of a string against the least of the table, and the test voltage against what may be used.
 *
 * @source IEC 62446-1 by poster and manual (secondary), see INSULATION_SOURCE; two readings make one as resistances in
 *   parallel, roughly (an instrument manual has a formula of its own).
 */
export function judgeInsulation({ what, insulation, reading, where }: StringFacts): RecordRow {
  const path = `${where}.insulation_both_mohm`
  if (insulation === undefined) return openRow(what, "as the converters' maker says", "maker's", path)
  const {
    test_v: testV,
    table_test_v: tableV,
    max_system_v: maxV,
    least_mohm: leastMohm,
    raised_voc_v: raisedV,
  } = insulation
  const expected =
    testV === null
      ? 'NO TEST: the maximum system voltage of the modules is not stated, or below every voltage of the table'
      : `test with ${testV} V (1.25 x Voc is ${shown(raisedV, 1, 'V')})${testV < tableV ? `; below the ${tableV} V of the standard, as the modules are made for ${maxV ?? 0} V` : ''}`
  const row = openRow(
    what,
    expected,
    `at least ${leastMohm} Mohm; never above ${maxV ?? 'the maximum system voltage,'} V`,
    path,
  )
  const read = oneValue(reading)
  if (read === undefined) {
    const half = reading.insulation_negative_mohm ?? reading.insulation_positive_mohm
    if (half === undefined) return row
    return readRow(
      row,
      shown(half, 2, 'Mohm'),
      half < leastMohm ? 'fail' : 'look',
      'one of two readings; the other is missing',
    )
  }
  const usedV = reading.insulation_test_v
  const measured = `${shown(read, 2, 'Mohm')}${usedV === undefined ? '' : ` at ${usedV} V`}`
  if (usedV !== undefined && maxV !== null && usedV > maxV)
    return readRow(
      row,
      measured,
      'fail',
      `tested with ${usedV} V, above the ${maxV} V that the modules are made for: have the modules looked at`,
    )
  if (read < leastMohm)
    return readRow(
      row,
      measured,
      'fail',
      `below ${leastMohm} Mohm; wet modules read lower: repeat dry, but a wet failure is a failure`,
    )
  if (testV === null) return readRow(row, measured, 'look', 'no test voltage follows from the project')
  if (usedV === undefined) return readRow(row, measured, 'look', 'the test voltage was not noted')
  if (usedV < testV) return readRow(row, measured, 'fail', `tested with ${usedV} V, below the ${testV} V of the table`)
  return readRow(row, measured, 'pass', testV < tableV ? 'the test is below the standard' : '')
}

/** Both conductors joined, or negative and positive one after the other: resistances in parallel. */
export function oneValue(reading: StringFacts['reading']): number | undefined {
  const { insulation_both_mohm: both, insulation_negative_mohm: negative, insulation_positive_mohm: positive } = reading
  if (both !== undefined) return both
  if (negative === undefined || positive === undefined) return undefined
  return negative === 0 || positive === 0 ? 0 : 1 / (1 / negative + 1 / positive)
}
