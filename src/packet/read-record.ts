import { isPacketRecord, RECORD_FORMAT, RECORD_FORMATS, type PacketRecord } from '../drawings/index.js'
import { FileError } from '../files/index.js'
import { LARGEST_RESULT_BYTES, MOST_RESULT_MARKS, readNamedText } from '../project/index.js'
import { isWhole } from '../seal/index.js'
import { DoubtfulJson, parseJson, TooMuchJson } from '../values/index.js'

/**
 * Reads what `draw-permit --result` wrote of an earlier issue.
 *
 * @throws FileError when it cannot be read, or is not what was written.
 */
export function readRecord(path: string): PacketRecord {
  const refuse = (why: string): FileError =>
    new FileError(`${path} ${why}; it must be what draw-permit --result wrote`, { exitCode: 2 })
  let data: unknown
  try {
    data = parseJson(readNamedText(path, LARGEST_RESULT_BYTES), MOST_RESULT_MARKS)
  } catch (error) {
    if (error instanceof TooMuchJson) throw refuse(error.ofFile)
    if (error instanceof DoubtfulJson) throw refuse(`is JSON ${error.message}`)
    if (error instanceof SyntaxError) throw refuse('is not JSON')
    throw error
  }
  if (typeof data !== 'object' || data === null || Array.isArray(data)) throw refuse('is no result of a packet')
  const fields = data as Readonly<Record<string, unknown>>
  if (!RECORD_FORMATS.some((format) => format === fields['format'])) throw refuse(`is no '${RECORD_FORMAT}'`)
  if (!isWhole(fields)) throw refuse('is not as it was written: its seal does not fit')
  if (!isPacketRecord(fields)) throw refuse('is a damaged result of a packet')
  return fields as unknown as PacketRecord
}
