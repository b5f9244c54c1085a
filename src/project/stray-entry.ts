import { didYouMean } from './did-you-mean.js'
import type { Locator } from './locator.js'
import type { Override } from './override.js'
import { formatPath, isWithin, type Segments } from './path.js'
import { isPlainMap, valueAt } from './plain-data.js'
import { listWords } from './words.js'

/**
 * `--set roof_planes.soth.azimuth_deg=190` makes a new plane, in which much is then missing: says that it is new.
 *
 * @param segments Path of the problem.
 * @returns Text to end a message with, or ''.
 */
export function sayStrayEntry(
  overrides: readonly Override[],
  data: unknown,
  locator: Pick<Locator, 'isInFile'>,
  segments: Segments,
): string {
  for (let length = 2; length < segments.length; length++) {
    const entry = segments.slice(0, length)
    const makesIt = (each: Override) => each.segments.length > length && each.ids[length - 1] === true
    if (!overrides.some((each) => makesIt(each) && isWithin(each.segments, entry))) continue
    if (locator.isInFile(entry) || !locator.isInFile(entry.slice(0, -1))) continue
    const id = String(entry.at(-1))
    const siblings = valueAt(data, entry.slice(0, -1))
    if (!isPlainMap(siblings)) return ''
    const ids = Object.keys(siblings).filter((name) => name !== id)
    const near = didYouMean(id, ids)
    return `; ${formatPath(entry)} is new with this --set${near === '' ? `, the file has ${listWords(ids)}` : near}`
  }
  return ''
}
