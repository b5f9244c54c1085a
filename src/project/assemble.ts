import type { Complaint } from './explain/complaint.js'
import type { MergedFile } from './locator.js'
import { stillMadeUp } from './made-up-paths.js'
import { mergeUnder } from './merge-under.js'
import { applyOverride, readOverride, type BadOverride, type Override } from './override.js'
import { parseYamlOnce } from './parse-yaml-once.js'
import { formatPath, isWithin } from './path.js'
import { isPlainMap, valueAt, type PlainMap } from './plain-data.js'
import type { Problem } from './problem.js'
import { readReferenced } from './read-referenced.js'
import { REFERENCES, type Reference } from './reference.js'
import { projectSchema } from './schema.js'
import { showKind } from './words.js'

/** What the project file, the files that it names and the overrides give together. */
export interface Assembled {
  readonly overrides: readonly Override[]
  readonly files: ReadonlyMap<string, string>
  readonly merged: readonly MergedFile[]
  /** Dotted paths of made-up values, the project's own first; none that an override states or that lies behind another. */
  readonly madeUp: readonly string[]
  /** Problems that have a place already. */
  readonly problems: readonly Problem[]
  /** Problems whose place is that of a value in the project. */
  readonly complaints: readonly Complaint[]
  /** How many of the complaints are about files that cannot be read. */
  readonly unreadable: number
  /** Whether every file that extends the project was taken in; ids cannot be checked otherwise. */
  readonly isWhole: boolean
}

/** Reads the files that the project names, merges those that extend it, and applies the overrides. Changes `main.data`. */
export function assemble(
  main: { readonly data: PlainMap; readonly madeUp: readonly string[] },
  options: { readonly overrideTexts: readonly string[]; readonly folder: string; readonly allowOutside: boolean },
): Assembled {
  const { data } = main
  const { overrideTexts, folder, allowOutside } = options
  const problems: Problem[] = []
  const complaints: Complaint[] = []
  const overrides: Override[] = []
  let unreadable = 0
  let isWhole = true
  const refuse = ({ name, path, message }: BadOverride) => problems.push({ file: name, path, message })
  for (const text of overrideTexts) {
    const override = readOverride(text, projectSchema())
    if ('message' in override) refuse(override)
    else overrides.push(override)
  }
  const apply = (override: Override) => {
    const message = applyOverride(data, override)
    if (message !== undefined) refuse({ ...override, path: formatPath(override.segments), message })
  }

  // What names a file is needed to read it; the rest may reach into what was read.
  overrides.filter(namesFile).forEach(apply)
  const files = new Map<string, string>()
  const merged: MergedFile[] = []
  const madeUp = [...main.madeUp]
  for (const reference of REFERENCES) {
    const found = readReferenced(reference, data, folder, allowOutside)
    if (found === undefined) continue
    if ('trouble' in found) {
      complaints.push({ segments: reference.segments, at: 'value', message: found.trouble })
      if (found.unreadable) unreadable += 1
      if (reference.mergedInto !== undefined) isWhole = false
      continue
    }
    files.set(found.name, found.text)
    if (reference.mergedInto !== undefined) {
      const own = valueAt(data, reference.mergedInto)
      const stated = new Set(isPlainMap(own) ? entriesOf(own) : [])
      const file = mergeFile(found.name, found.text, data, reference)
      const marked = file.yaml.madeUp.filter((path) => !stated.has(path.split('.', 2).join('.')))
      madeUp.push(...marked.map((path) => `${formatPath(reference.mergedInto ?? [])}.${path}`))
      merged.push({ mergedInto: reference.mergedInto, yaml: file.yaml })
      problems.push(...file.problems)
      if (file.problems.length > 0) isWhole = false
    }
  }
  overrides.filter((override) => !namesFile(override)).forEach(apply)
  return {
    overrides,
    files,
    merged,
    madeUp: stillMadeUp(madeUp, overrides),
    problems,
    complaints,
    unreadable,
    isWhole,
  }
}

/** `modules.m410` for each entry of each group: where one stands in project and file, the project's counts alone. */
function entriesOf(groups: PlainMap): string[] {
  return Object.entries(groups).flatMap(([group, entries]) =>
    isPlainMap(entries) ? Object.keys(entries).map((id) => `${group}.${id}`) : [group],
  )
}

function namesFile(override: Override): boolean {
  return REFERENCES.some(({ segments }) => isWithin(segments, override.segments))
}

function mergeFile(name: string, text: string, data: PlainMap, { mergedInto = [], segments }: Reference) {
  const yaml = parseYamlOnce(name, text)
  const part = formatPath(mergedInto)
  const refuse = (path: string, message: string) => [{ file: name, line: 1, column: 1, path, message }]
  if (yaml.problems.length > 0) return { yaml, problems: yaml.problems }
  if (!isPlainMap(yaml.data)) {
    const message = `a file for ${part} is a map of the same shape as ${part}; found ${showKind(yaml.data)}`
    return { yaml, problems: refuse(part, message) }
  }
  const naming = String(segments.at(-1))
  const { [naming]: nested, ...groups } = yaml.data
  const own = valueAt(data, mergedInto)
  if (isPlainMap(own)) mergeUnder(own, groups)
  if (nested === undefined) return { yaml, problems: [] }
  const message = 'a file that is referred to cannot refer to another; name that one in the project'
  return { yaml, problems: refuse(formatPath(segments), message) }
}
