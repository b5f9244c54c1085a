import type { Project } from '../../project/index.js'
import { editions, isEdition, type Edition } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'

/**
 * The edition of the electrical code to work by.
 *
 * @param asked Edition asked for on the command line; it wins over the project file.
 * @throws StageError when none is stated or the tables do not hold it.
 */
export function resolveEdition(project: Project, asked?: string): Edition {
  const name = asked ?? project.codes?.electrical
  const known = editions.join(', ')
  if (name === undefined)
    throw new StageError(
      'codes.electrical',
      `the edition of the electrical code is not stated; known are ${known}`,
      'Ask the building department which edition of the National Electrical Code it has adopted',
    )
  if (isEdition(name)) return name
  throw new StageError(
    'codes.electrical',
    `edition '${name}' is not in the tables; known are ${known}`,
    'Ask the building department which edition it has adopted; others are not computed',
  )
}
