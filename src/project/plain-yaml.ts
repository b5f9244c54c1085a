import { parseYaml } from './parse-yaml.js'
import { sortProblems } from './problem.js'
import { ProjectError } from './project-error.js'

/**
 * Data of a YAML file that is not checked further.
 *
 * @throws ProjectError when it is no YAML.
 */
export function readPlainYaml(file: string, text: string): unknown {
  const { data, problems } = parseYaml(file, text)
  if (problems.length > 0) throw new ProjectError(sortProblems(problems, [file]), 2, new Map([[file, text]]))
  return data
}
