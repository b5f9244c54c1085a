import { readSync } from 'node:fs'
import { LONGEST_HOUSE_LINE, MOST_HOUSES } from '../project/index.js'
import { FleetError } from './fleet-error.js'

/** Where a line stands in a file, bytes, without its line feed. */
export interface Line {
  readonly offset: number
  readonly length: number
}

/**
 * The whole lines of an open file from its beginning; what follows the last line feed is left out.
 *
 * @param path Of the file, for messages.
 * @throws FleetError when a line is longer, or there are more of them, than those of any fleet.
 */
export function* readLines(file: number, path: string): Generator<Line & { readonly text: string }> {
  const buffer = Buffer.alloc(65_536)
  /** Pieces of a line whose end is not read yet. */
  let pieces: Buffer[] = []
  let [offset, length, position, number] = [0, 0, 0, 0]
  for (;;) {
    const read = readSync(file, buffer, 0, buffer.length, position)
    if (read === 0) return
    position += read
    let at = 0
    for (let end = buffer.indexOf(10); end >= 0 && end < read; end = buffer.indexOf(10, at)) {
      number += 1
      if (number > MOST_HOUSES) {
        const says = `more than ${MOST_HOUSES} lines; at most as many houses are read: run the fleet in parts with --shard`
        throw new FleetError(`${path}:${number}: ${says}`, 2)
      }
      pieces.push(Buffer.from(buffer.subarray(at, end)))
      length += end - at
      yield { offset, length, text: Buffer.concat(pieces).toString('utf8') }
      offset += length + 1
      pieces = []
      length = 0
      at = end + 1
    }
    pieces.push(Buffer.from(buffer.subarray(at, read)))
    length += read - at
    if (length > LONGEST_HOUSE_LINE) {
      const says = `a line of more than ${LONGEST_HOUSE_LINE / 1e6} MB; a house has about 12 kB: is it what run-fleet wrote?`
      throw new FleetError(`${path}:${number + 1}: ${says}`, 2)
    }
  }
}
