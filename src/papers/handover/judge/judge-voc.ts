import { moduleVocV, vocRange } from '../../../fieldwork/index.js'
import { TEST_LIMITS } from '../../../tables/fieldwork/index.js'
import type { RecordRow } from '../handover-values.js'
import type { StringFacts } from './string-facts.js'
import { openRow, percent, readRow, shown } from './verdict.js'

/**
 * Open-circuit voltage of a string against its modules' data sheet at the cells' temperature.
 *
 * @source 5 % (instrument maker's poster, secondary), and nearer to the full string than to one with a module fewer or more.
 */
export function judgeVoc(string: StringFacts): RecordRow {
  const { what, modules, moduleId, module, cellC, reading, where } = string
  const limit = `${TEST_LIMITS.likeStrings * 100} % to each side, and less than half a module`
  if (cellC === undefined) {
    const row = openRow(what, 'by the table of temperatures', limit, `${where}.voc_v`)
    if (reading.voc_v === undefined) return row
    return readRow(
      row,
      shown(reading.voc_v, 1, 'V'),
      'look',
      'no cell temperature was noted, so it is held against nothing',
    )
  }
  const eachV = moduleVocV(moduleId, module, cellC)
  const expectedV = modules * eachV
  const { low_v: lowV, high_v: highV } = vocRange(expectedV, eachV)
  const row = openRow(
    what,
    `${shown(expectedV, 1, 'V')} (${modules} modules, cells ${cellC} C)`,
    `${lowV.toFixed(1)} to ${highV.toFixed(1)} V`,
    `${where}.voc_v`,
  )
  const readV = reading.voc_v
  if (readV === undefined) return row
  const off = `${percent(readV / expectedV - 1)} of the expected`
  if (readV >= lowV && readV <= highV) return readRow(row, shown(readV, 1, 'V'), 'pass', off)
  return readRow(row, shown(readV, 1, 'V'), 'fail', `${off}; ${lengthWords(readV, eachV, modules)}`)
}

/** What a string of that voltage looks like. */
function lengthWords(readV: number, eachV: number, modules: number): string {
  const looksLike = Math.round(readV / eachV)
  const fewer = modules - looksLike
  if (fewer === 0) return 'no whole module; look at bypass diodes, connectors and the noted temperature'
  const count = Math.abs(fewer) === 1 ? 'one module' : `${Math.abs(fewer)} modules`
  return `like ${count} ${fewer > 0 ? 'short' : 'too many'} (${shown(looksLike * eachV, 1, 'V')})`
}
