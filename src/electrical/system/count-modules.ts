import { StageError } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import type { Job } from './job.js'

/**
 * Number of modules of an array: stated, counted from its blocks, or known from the arrangement.
 *
 * @throws StageError when none of the three is there.
 */
export function countModules(job: Job, arrayId: string): number {
  const array = own(job.project.arrays, arrayId)
  if (array === undefined)
    throw new StageError(
      `arrays.${arrayId}`,
      `there is no array '${arrayId}'; known are ${Object.keys(job.project.arrays).join(', ')}`,
      'Use the id of an array',
    )
  const placed = own(job.context.arrangement?.modules, arrayId)
  if (placed !== undefined) return placed
  const { arrangement } = array
  if (typeof arrangement === 'object' && 'blocks' in arrangement)
    return Object.values(arrangement.blocks).reduce(
      (sum, block) => sum + block.rows * block.columns - new Set(block.omit).size,
      0,
    )
  if (array.modules !== undefined) return array.modules
  if (array.strings !== undefined) return array.strings.reduce((sum, string) => sum + string.modules, 0)
  throw new StageError(
    `arrays.${arrayId}.modules`,
    'the number of modules is not stated',
    'State modules, or place them with arrangement.blocks',
  )
}
