import type { Complaint } from './explain/complaint.js'
import { splitPath, type Segments } from './path.js'
import { isPlainMap, ownValue, valueAt } from './plain-data.js'
import { FORMAT, RENAMED_KEYS, RENAMED_VALUES } from './renames.js'

/** A name of an earlier version in a project's data. */
export interface FoundRename {
  readonly segments: Segments
  readonly at: 'key' | 'value'
  readonly from: string
  readonly to: string
}

/** Every name of an earlier version that stands in the data of a project. */
export function findRenames(data: unknown): FoundRename[] {
  const keys = RENAMED_KEYS.flatMap(({ under, from, to }): FoundRename[] => {
    const map = valueAt(data, [under])
    return isPlainMap(map) && Object.hasOwn(map, from) ? [{ segments: [under, from], at: 'key', from, to }] : []
  })
  const values = RENAMED_VALUES.flatMap(({ at, from, to }) =>
    pathsTo(data, splitPath(at))
      .filter((segments) => valueAt(data, segments) === from)
      .map((segments): FoundRename => ({ segments, at: 'value', from, to })),
  )
  return [...values, ...keys]
}

/** The new name of the key at a dotted path's segments, where an earlier version had it there. */
export function newNameOf(segments: readonly string[]): string | undefined {
  if (segments.length !== 2) return undefined
  return RENAMED_KEYS.find(({ under, from }) => under === segments[0] && from === segments[1])?.to
}

/** A rename as the person reads it. */
export function sayRename({ segments, at, from, to }: FoundRename): Complaint {
  const remedy = `write ${at === 'key' ? to : `'${to}'`}, or let 'gablewatt check-project FILE --rename' write the new names`
  const message =
    segments[0] === 'format'
      ? `found '${from}', this program reads '${to}', in which some keys and values have new names; ${remedy}`
      : `'${from}' is called ${to} since ${FORMAT}; ${remedy}`
  return { segments, at, message }
}

/** The paths of the data that a pattern with `*` for any key fits. */
function pathsTo(data: unknown, pattern: readonly string[], before: Segments = []): Segments[] {
  const [first, ...rest] = pattern
  if (first === undefined) return [before]
  if (!isPlainMap(data)) return []
  const keys = first === '*' ? Object.keys(data) : [first].filter((key) => Object.hasOwn(data, key))
  return keys.flatMap((key) => pathsTo(ownValue(data, key), rest, [...before, key]))
}
