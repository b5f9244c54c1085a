import { createHash } from 'node:crypto'
import { dirname, resolve } from 'node:path'
import { explain } from './explain/explain.js'
import { makeLocator, type Location, type Locator, type MergedFile } from './locator.js'
import { mergeUnder } from './merge-under.js'
import { applyOverride, readOverride, type BadOverride, type Override } from './override.js'
import { parseYaml } from './parse-yaml.js'
import { formatPath, isWithin, splitPath, type Segments } from './path.js'
import { isPlainMap, valueAt, type PlainMap } from './plain-data.js'
import { sortProblems, type Problem } from './problem.js'
import { ProjectError } from './project-error.js'
import type { Project } from './project-types.generated.js'
import { validate } from './project-validator.generated.js'
import { decodeText, FileTrouble, LARGEST_YAML_BYTES, readBytes, readStandardInput } from './read-file.js'
import { readReferenced } from './read-referenced.js'
import { REFERENCES } from './reference.js'
import { checkRules } from './rules/index.js'
import { projectSchema } from './schema.js'
import type { YamlFile } from './yaml-file.js'
import { showKind } from './words.js'

export interface LoadOptions {
  /** Path of the project file; '-' takes `text`, or standard input when there is none. */
  readonly path: string
  readonly text?: string
  /** Each `path=value`, applied in this order before the project is checked. */
  readonly overrides?: readonly string[]
  /** Whether files outside the project's folder may be referenced. */
  readonly allowOutside?: boolean
  /** Folder that references are relative to; that of the project file, or the current one for '-'. */
  readonly baseFolder?: string
}

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
  /** Where the value of a dotted path stands; for a value that is not there, the map that would hold it. */
  locate(path: string): Location
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
  const main = parseYaml(file, text)
  const sources = new Map([[file, text]])
  if (main.problems.length > 0) throw new ProjectError(sortProblems(main.problems, [file]), 2, sources)
  const { data } = main
  if (!isPlainMap(data)) {
    const message = `a project file is a map of 'key: value' lines; found ${showKind(data)}`
    throw new ProjectError([{ file, line: 1, column: 1, path: '', message }], 2, sources)
  }

  const overrides = overrideTexts.map((each) => readOverride(each, projectSchema()))
  const good = overrides.filter((each): each is Override => 'segments' in each)
  const problems: Problem[] = overrides.filter((each): each is BadOverride => 'message' in each).map(overrideProblem)
  let unreadable = 0

  const namesFile = (each: Override) => REFERENCES.some(({ segments }) => isWithin(segments, each.segments))
  const apply = (each: Override) => {
    const message = applyOverride(data, each)
    if (message !== undefined) problems.push(overrideProblem({ ...each, path: formatPath(each.segments), message }))
  }
  // What names a file is needed to read it; the rest may reach into what was read.
  good.filter(namesFile).forEach(apply)

  const files = new Map<string, string>()
  const merged: MergedFile[] = []
  const troubles: { segments: Segments; message: string }[] = []
  for (const reference of REFERENCES) {
    const found = readReferenced(reference, data, folder, allowOutside)
    if (found === undefined) continue
    if ('trouble' in found) {
      troubles.push({ segments: reference.segments, message: found.trouble })
      if (found.unreadable) unreadable += 1
      continue
    }
    files.set(found.name, found.text)
    if (reference.mergedInto === undefined) continue
    const { yaml, problems: inside } = mergeFile(found.name, found.text, data, reference.mergedInto)
    merged.push({ mergedInto: reference.mergedInto, yaml })
    sources.set(found.name, found.text)
    problems.push(...inside)
  }
  good.filter((each) => !namesFile(each)).forEach(apply)

  const locator = makeLocator(main, merged, good)
  const place = (segments: Segments, at: 'key' | 'value' | 'parent', message: string): Problem => {
    const location = locator.locate(segments, at)
    const where = 'override' in location ? { file: location.override } : location
    return { ...where, path: formatPath(segments), message }
  }
  problems.push(...troubles.map(({ segments, message }) => place(segments, 'value', message)))
  const schemaProblems = checkSchema(data, locator, place)
  problems.push(...schemaProblems)
  const project = data as unknown as Project
  if (schemaProblems.length === 0) {
    const paths = checkRules(project).map(({ segments, at, message }) => place(segments, at, message))
    problems.push(...paths)
  }
  if (problems.length > 0) {
    const order = [file, ...merged.map(({ yaml }) => yaml.file), ...overrides.map(({ name }) => name)]
    throw new ProjectError(sortProblems(problems, order), unreadable === problems.length ? 3 : 2, sources)
  }
  return {
    project,
    path,
    folder,
    digest: digestOf([text, ...[...files].flat(), ...overrideTexts]),
    overrides: overrideTexts,
    files,
    locate: (dotted) => locator.locate(dotted === '' ? [] : splitPath(dotted), 'value'),
  }
}

function readMain(file: string, { path, text }: LoadOptions): string {
  try {
    if (path !== '-') return decodeText(readBytes(path, LARGEST_YAML_BYTES))
    const bytes = text === undefined ? readStandardInput(LARGEST_YAML_BYTES) : Buffer.from(text, 'utf8')
    if (bytes.length > LARGEST_YAML_BYTES) throw new FileTrouble('is larger than 2 MB; at most that is read', false)
    return decodeText(bytes)
  } catch (error) {
    if (!(error instanceof FileTrouble)) throw error
    throw new ProjectError([{ file, path: '', message: error.message }], error.unreadable ? 3 : 2)
  }
}

function mergeFile(
  name: string,
  text: string,
  data: PlainMap,
  mergedInto: Segments,
): { yaml: YamlFile; problems: readonly Problem[] } {
  const yaml = parseYaml(name, text)
  const part = formatPath(mergedInto)
  if (yaml.problems.length > 0) return { yaml, problems: yaml.problems }
  if (!isPlainMap(yaml.data)) {
    const message = `a file for ${part} is a map of the same shape as ${part}; found ${showKind(yaml.data)}`
    return { yaml, problems: [{ file: name, line: 1, column: 1, path: part, message }] }
  }
  const own = valueAt(data, mergedInto)
  const { file: nested, ...groups } = yaml.data
  if (isPlainMap(own)) mergeUnder(own, groups)
  if (nested === undefined) return { yaml, problems: [] }
  const message = 'a file that is referred to cannot refer to another; name that one in the project'
  return { yaml, problems: [{ file: name, line: 1, column: 1, path: `${part}.file`, message }] }
}

function overrideProblem({ name, path, message }: BadOverride): Problem {
  return { file: name, path, message }
}

function checkSchema(
  data: PlainMap,
  locator: Locator,
  place: (segments: Segments, at: 'key' | 'value' | 'parent', message: string) => Problem,
): Problem[] {
  if (validate(data)) return []
  const root = projectSchema()
  const complaints = explain(root, data, [], { root, sourceAt: (segments) => locator.sourceAt(segments) })
  if (complaints.length > 0) return complaints.map(({ segments, at, message }) => place(segments, at, message))
  // The validator refuses what explain does not know of: its own words are better than silence.
  return (validate.errors ?? []).map(({ instancePath, keyword, params }) =>
    place(instancePath.split('/').slice(1), 'value', `breaks '${keyword}' of the schema: ${JSON.stringify(params)}`),
  )
}

/** Each part with its length before it, so that no two lists of parts give the same bytes. */
function digestOf(parts: readonly string[]): string {
  const hash = createHash('sha256')
  for (const part of parts) hash.update(`${Buffer.byteLength(part)}:`).update(part)
  return hash.digest('hex')
}
