import { checkData } from './check-data.js'
import { makeLocator } from './locator.js'
import { parseYamlOnce } from './parse-yaml-once.js'
import { formatPath } from './path.js'
import { isPlainMap, ownValue } from './plain-data.js'
import { sortProblems, type Problem } from './problem.js'
import { ProjectError } from './project-error.js'
import type { Project } from './project-types.generated.js'
import { readMain } from './read-main.js'
import { checkFleet } from './rules/index.js'

/** Columns of a fleet's table that are no paths of the project file. */
export interface ExtraColumns {
  readonly names: readonly string[]
  /** The one of them that names a house in place of `id`. */
  readonly nameColumn?: string | undefined
}

/**
 * What a template says about its fleet, before any row has filled its gaps.
 *
 * @throws ProjectError when its `fleet` part is wrong, or the file cannot be read. All else is told with each row.
 */
export function readFleetPart(path: string): ExtraColumns {
  const text = readMain(path, { path })
  const main = parseYamlOnce(path, text)
  const { data } = main
  const fleet = isPlainMap(data) ? ownValue(data, 'fleet') : undefined
  if (!isPlainMap(data) || main.problems.length > 0 || fleet === undefined) return { names: [] }
  const locator = makeLocator(main, [], [])
  const wrong = checkData(data, locator, false).filter(({ segments }) => segments[0] === 'fleet')
  const part = { fleet } as unknown as Project
  if (wrong.length === 0) checkFleet(part, (segments, message, at = 'value') => wrong.push({ segments, message, at }))
  const problems = wrong.map(({ segments, at, message }): Problem => {
    const place = locator.locate(segments, at)
    return { ...('override' in place ? { file: path } : place), path: formatPath(segments), message }
  })
  if (problems.length > 0) throw new ProjectError(sortProblems(problems, [path]), 2, new Map([[path, text]]))
  return { names: part.fleet?.extra_columns ?? [], nameColumn: part.fleet?.name_column }
}
