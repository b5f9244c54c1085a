import { stringIscA } from '../../../fieldwork/index.js'
import { TEST_LIMITS } from '../../../tables/fieldwork/index.js'
import type { RecordRow } from '../handover-values.js'
import type { StringFacts } from './string-facts.js'
import { openRow, percent, readRow, shown } from './verdict.js'

const LIKE = `${TEST_LIMITS.likeStrings * 100} %`

/**
 * Short-circuit current of a string against its data sheet in the light and at the temperature that were noted.
 *
 * @source 5 % between like strings (instrument maker's poster, secondary); the same against the data sheet is ours, on the safe side.
 */
export function judgeIsc({ what, current, cellC, irradianceWM2, reading, where }: StringFacts): RecordRow {
  const expectedA =
    cellC === undefined || irradianceWM2 === undefined ? null : stringIscA(current, irradianceWM2, cellC)
  const full = current.isc_a === null ? 'Isc not stated' : `${shown(current.isc_a, 2, 'A')} x G / 1000 W/m2, at 25 C`
  const row = openRow(
    what,
    expectedA === null
      ? full
      : `${shown(expectedA, 2, 'A')} at ${irradianceWM2 ?? 0} W/m2, cells ${cellC ?? 0} C${current.isc_pct_per_c === null ? ' (not corrected for temperature)' : ''}`,
    `${LIKE} of the expected and of like strings`,
    `${where}.isc_a`,
  )
  const readA = reading.isc_a
  if (readA === undefined) return row
  if (expectedA === null || expectedA === 0)
    return readRow(
      row,
      shown(readA, 2, 'A'),
      'look',
      'light or cell temperature was not noted, so it is held against nothing',
    )
  const share = readA / expectedA - 1
  const why = `${percent(share)} of the expected`
  return readRow(row, shown(readA, 2, 'A'), Math.abs(share) <= TEST_LIMITS.likeStrings ? 'pass' : 'fail', why)
}

/** Operating current: a place to write it, and its reading; only like strings have a limit. */
export function operatingRow({ what, current, irradianceWM2, reading, where }: StringFacts): RecordRow[] {
  if (reading.operating_a === undefined) return []
  const expected =
    current.imp_a === null || irradianceWM2 === undefined
      ? 'current at maximum power x G / 1000 W/m2'
      : `about ${shown((current.imp_a * irradianceWM2) / 1000, 2, 'A')} at ${irradianceWM2} W/m2, less where the inverter limits`
  const row = openRow(`${what}, in operation`, expected, `${LIKE} of like strings`, `${where}.operating_a`)
  return [readRow(row, shown(reading.operating_a, 2, 'A'), 'look', 'for information; like strings are compared below')]
}

/** What is compared between like strings. */
type Compared = 'voc_v' | 'isc_a' | 'operating_a'

/**
 * Strings that are alike against each other: each brought to the same light and temperature where both were noted.
 *
 * @source identical strings within 5 % (instrument maker's poster, secondary)
 */
export function judgeAlike(strings: readonly StringFacts[], key: Compared, unit: string): RecordRow[] {
  const groups = new Map<string, StringFacts[]>()
  for (const string of strings)
    if (string.reading[key] !== undefined) groups.set(string.alike, [...(groups.get(string.alike) ?? []), string])
  return [...groups.values()].flatMap((group): RecordRow[] => {
    const [first] = group
    if (first === undefined || group.length < 2) return []
    const values = group.map((each) => (each.reading[key] ?? 0) / scaleOf(each, group, key))
    const [low, high] = [Math.min(...values), Math.max(...values)]
    const spread = high === 0 ? 0 : (high - low) / high
    const row = openRow(
      `like strings: ${group.map(({ id }) => id).join(', ')}`,
      'alike',
      `within ${LIKE}`,
      `${first.where}.${key}`,
    )
    const pass = spread <= TEST_LIMITS.likeStrings + 1e-12
    const lowest = group[values.indexOf(low)]
    return [
      readRow(
        row,
        `${(spread * 100).toFixed(1)} % apart`,
        pass ? 'pass' : 'fail',
        pass ? '' : `${lowest?.id ?? ''} reads lowest (${(lowest?.reading[key] ?? 0).toFixed(2)} ${unit})`,
      ),
    ]
  })
}

/** Light and temperature taken out, where all of the group have them. */
function scaleOf(string: StringFacts, group: readonly StringFacts[], key: Compared): number {
  const { cellC, irradianceWM2, module, current } = string
  const hasCell = group.every((each) => each.cellC !== undefined)
  if (key === 'voc_v') {
    const pct = module.voc_temp_coeff_pct_per_c
    return hasCell && pct !== undefined && cellC !== undefined ? 1 + (pct / 100) * (cellC - 25) : 1
  }
  const hasLight = group.every((each) => (each.irradianceWM2 ?? 0) > 0)
  if (!hasLight || irradianceWM2 === undefined) return 1
  const alpha = key === 'isc_a' && hasCell && cellC !== undefined ? (current.isc_pct_per_c ?? 0) * (cellC - 25) : 0
  return (irradianceWM2 / 1000) * (1 + alpha / 100)
}
