import { isPlainMap, setOwn, type PlainMap } from './plain-data.js'

/**
 * Adds the entries of a file's groups to those that stand in the project. An entry that stands in both is the
 * project's alone: two data sheets are never mixed.
 *
 * @param own For example the part `equipment` of the project; it is changed.
 */
export function mergeUnder(own: PlainMap, fromFile: PlainMap): void {
  for (const [group, entries] of Object.entries(fromFile)) {
    const present = Object.hasOwn(own, group) ? own[group] : undefined
    if (present === undefined) setOwn(own, group, entries)
    else if (isPlainMap(present) && isPlainMap(entries)) {
      const merged: PlainMap = {}
      for (const [id, entry] of [...Object.entries(entries), ...Object.entries(present)]) setOwn(merged, id, entry)
      setOwn(own, group, merged)
    }
  }
}
