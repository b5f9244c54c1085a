import { dirname, resolve } from 'node:path'
import { withAcModules } from './ac-modules.js'
import { assemble } from './assemble.js'
import { checkData } from './check-data.js'
import { digestOf } from '../seal/index.js'
import { foundDocuments } from './found-documents.js'
import type { Complaint } from './explain/complaint.js'
import type { LoadOptions } from './load-options.js'
import { makeLocator, type Location } from './locator.js'
import { nameOfOverride } from './override.js'
import { parseYamlOnce } from './parse-yaml-once.js'
import { formatPath, splitPath } from './path.js'
import { isPlainMap } from './plain-data.js'
import { MOST_PROBLEMS, sortProblems, type Problem } from './problem.js'
import { ProjectError } from './project-error.js'
import type { Project } from './project-types.generated.js'
import { readMain } from './read-main.js'
import { sayStrayEntry } from './stray-entry.js'
import { showKind } from './words.js'

/** A project that is complete by the schema and by the rules. */
export interface LoadedProject {
  readonly project: Project
  readonly path: string
  readonly folder: string
  /** SHA-256, in hexadecimal, of the project file, the referenced files and the overrides. */
  readonly digest: string
  readonly overrides: readonly string[]
  /** Text of the referenced files, such as the EPW, by their paths as written. */
  readonly files: ReadonlyMap<string, string>
  /** Ids under documents whose file is there and is a PDF. */
  readonly documents: ReadonlySet<string>
  /** Why the file of a document that is there cannot be used, such as its size, by id. */
  readonly documentTroubles: ReadonlyMap<string, string>
  /** Dotted paths of the values that bear the marker `!made_up`; a map or list stands for all that lies under it. */
  readonly madeUp: readonly string[]
  /** Where the value of a dotted path stands; for a value that is not there, the map that would hold it. */
  readonly locate: (path: string) => Location
}

/**
 * Reads a project file with all that it refers to, and checks it.
 *
 * @throws ProjectError with every problem that was found.
 */
export function loadProject(options: LoadOptions): LoadedProject {
  const { path, overrides: overrideTexts = [], allowOutside = false } = options
  const file = path === '-' ? '<stdin>' : path
  const folder = resolve(options.baseFolder ?? (path === '-' ? '.' : dirname(path)))
  const text = readMain(file, options)
  const main = parseYamlOnce(file, text)
  const sources = new Map([[file, text]])
  if (main.problems.length > 0) throw new ProjectError(sortProblems(main.problems, [file]), 2, sources)
  const { data } = main
  if (!isPlainMap(data)) {
    const message = `a project file is a map of 'key: value' lines; found ${showKind(data)}`
    throw new ProjectError([{ file, line: 1, column: 1, path: '', message }], 2, sources)
  }

  const parts = assemble({ data, madeUp: main.madeUp }, { overrideTexts, folder, allowOutside })
  const { files, merged, overrides } = parts
  for (const { yaml } of merged) sources.set(yaml.file, yaml.text)
  const locator = makeLocator(main, merged, overrides)
  const place = ({ segments, at, message }: Complaint): Problem => {
    const location = locator.locate(segments, at)
    const problem = { path: formatPath(segments), message }
    if (!('override' in location)) return { ...location, ...problem }
    const stray = at === 'parent' ? sayStrayEntry(overrides, data, locator, segments) : ''
    return { file: location.override, ...problem, message: message + stray }
  }
  const wrong = [...parts.complaints, ...checkData(data, locator, parts.isWhole)].slice(0, MOST_PROBLEMS + 1).map(place)
  const problems = [...parts.problems, ...wrong]
  if (problems.length > 0) {
    const order = [file, ...merged.map(({ yaml }) => yaml.file), ...overrideTexts.map(nameOfOverride)]
    throw new ProjectError(sortProblems(problems, order), parts.unreadable === problems.length ? 3 : 2, sources)
  }
  const project = withAcModules(data as unknown as Project)
  return {
    project,
    path,
    folder,
    digest: digestOf([text, ...[...files].flat(), ...overrideTexts]),
    overrides: overrideTexts,
    files,
    madeUp: parts.madeUp,
    ...foundDocuments(project, folder, allowOutside),
    locate: (dotted) => locator.locate(dotted === '' ? [] : splitPath(dotted), 'value'),
  }
}
