import { findRenames, type FoundRename } from './find-renames.js'
import { parseYaml } from './parse-yaml.js'
import { isPlainMap } from './plain-data.js'
import { sortProblems } from './problem.js'
import { ProjectError } from './project-error.js'
import { rangeOf } from './yaml-file.js'

/** A file with the names of this version. */
export interface RenamedText {
  readonly text: string
  /** Words that were replaced. */
  readonly replaced: number
}

/**
 * Writes the names of this version into a project file, a template or an equipment file of an earlier one. Only the
 * very words of keys and values are replaced; comments, order and layout stay as they are.
 *
 * @throws ProjectError when the text is not readable as YAML, or holds an old name beside the new one.
 */
export function renameText(file: string, text: string): RenamedText {
  const yaml = parse(file, text)
  const places = new Map<number, { readonly end: number; readonly to: string }>()
  for (const { segments, at, to } of renamesIn(yaml.data)) {
    const range = rangeOf(yaml, segments, at)
    // An anchored map is met once for each of its aliases.
    if (range !== undefined) places.set(range[0], { end: range[1], to })
  }
  let renamed = text
  for (const [start, { end, to }] of [...places].toSorted(([a], [b]) => b - a)) {
    renamed = renamed.slice(0, start) + to + renamed.slice(end)
  }
  // An old name beside the new one would now stand there twice.
  parse(file, renamed)
  return { text: renamed, replaced: places.size }
}

function parse(file: string, text: string): ReturnType<typeof parseYaml> {
  const yaml = parseYaml(file, text)
  if (yaml.problems.length > 0) throw new ProjectError(sortProblems(yaml.problems, [file]), 2, new Map([[file, text]]))
  return yaml
}

/** A file without a format is one that is merged under `equipment`. */
function renamesIn(data: unknown): FoundRename[] {
  if (!isPlainMap(data) || Object.hasOwn(data, 'format')) return findRenames(data)
  return findRenames({ equipment: data }).map((found) => ({ ...found, segments: found.segments.slice(1) }))
}
