import type { Complaint } from './explain/complaint.js'
import { explain } from './explain/explain.js'
import { parseYaml } from './parse-yaml.js'
import { MADE_UP } from './made-up-tag.js'
import { formatPath, splitPath } from './path.js'
import { MOST_PROBLEMS, sortProblems, type Problem } from './problem.js'
import { ProjectError } from './project-error.js'
import type { ErrorObject } from './schema-error.js'
import type { Schema } from './schema.js'
import { findKey, findSource, findValue, type YamlFile } from './yaml-file.js'

/** How a YAML file of a kind of its own is checked. */
export interface YamlRules<Data> {
  readonly schema: Schema
  /** The precompiled validator of the schema. */
  readonly validate: ((data: unknown) => boolean) & { errors?: ErrorObject[] | null | undefined }
  /** What is wrong with data whose parts are each valid by the schema. */
  readonly check: (data: Data) => Complaint[]
}

/** Data that are right by schema and rules. */
export interface CheckedYaml<Data> {
  readonly data: Data
  /** Refuses the file for what is found out about it later. */
  readonly refuse: (complaints: readonly Complaint[]) => ProjectError
  /** Line of a path, counted from 1. */
  readonly lineOf: (segments: Complaint['segments']) => number
}

/**
 * Reads a YAML file beside the project file, such as a price list, and checks it.
 *
 * @param file Name of the file, for the messages.
 * @throws ProjectError with every problem, each at its line and column.
 */
export function readCheckedYaml<Data>(file: string, text: string, rules: YamlRules<Data>): CheckedYaml<Data> {
  const yaml = parseYaml(file, text)
  const sources = new Map([[file, text]])
  const refuseFor = (problems: readonly Problem[]): ProjectError =>
    new ProjectError(sortProblems(problems, [file]), 2, sources)
  if (yaml.problems.length > 0) throw refuseFor(yaml.problems)
  const place = ({ segments, at, message }: Complaint): Problem => ({
    file,
    ...spanAt(yaml, segments, at),
    path: formatPath(segments),
    message,
  })
  const refuse = (complaints: readonly Complaint[]): ProjectError =>
    refuseFor(complaints.slice(0, MOST_PROBLEMS + 1).map(place))
  const { data } = yaml
  const marked = yaml.madeUp.map((path) => ({ segments: splitPath(path), at: 'value' as const, message: NOT_HERE }))
  if (marked.length > 0) throw refuse(marked)
  const complaints = rules.validate(data) ? rules.check(data as Data) : explainMisfit(data, yaml, rules)
  if (complaints.length > 0) throw refuse(complaints)
  return { data: data as Data, refuse, lineOf: (segments) => spanAt(yaml, segments, 'key').line }
}

const NOT_HERE = `the marker ${MADE_UP} counts in a project file and its equipment only; take it away here`

/** Where a path stands, or the nearest above it that the file has. */
function spanAt(
  yaml: YamlFile,
  segments: Complaint['segments'],
  at: Complaint['at'],
): { readonly line: number; readonly column: number; readonly length: number } {
  const target = at === 'parent' ? segments.slice(0, -1) : segments
  for (let end = target.length; end > 0; end--) {
    const inner = target.slice(0, end)
    const span = at === 'value' && end === target.length ? findValue(yaml, inner) : findKey(yaml, inner)
    if (span !== undefined) return span
  }
  return { line: 1, column: 1, length: 1 }
}

function explainMisfit<Data>(data: unknown, yaml: YamlFile, { schema, validate }: YamlRules<Data>): Complaint[] {
  const complaints = explain(schema, data, [], {
    root: schema,
    sourceAt: (segments) => findSource(yaml, segments),
  })
  if (complaints.length > 0) return complaints
  // The validator refuses what explain does not know of: its own words are better than silence.
  return (validate.errors ?? []).map(({ instancePath, keyword, params }) => ({
    segments: instancePath.split('/').slice(1),
    at: 'value',
    message: `breaks '${keyword}' of the schema: ${JSON.stringify(params)}`,
  }))
}
