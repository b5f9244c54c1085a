import type { Arrangement } from '../../roof/index.js'
import { spaceMounts, type MountValues, type MountWishes } from '../../structure/index.js'
import { Worksheet, type Result } from '../../worksheet/index.js'
import type { HouseInput } from '../house-input.js'

/**
 * The mounts under the modules of an arrangement, with their own proof alone.
 *
 * @throws StageError when a safety input is missing or no module lies on a roof plane.
 */
export function mountsUnder(
  { project, documents, documentTroubles }: HouseInput,
  { modules, planes }: Arrangement,
  wishes: MountWishes = {},
): Result<MountValues> {
  return spaceMounts(
    project,
    { modules, planes: Object.values(planes) },
    {
      ...wishes,
      ...(documents === undefined ? {} : { documents }),
      ...(documentTroubles === undefined ? {} : { documentTroubles }),
    },
  )
}

/** Mounts with the proof of the arrangement before their own. */
export function withArrangement(arrangement: Result<Arrangement>, mounts: Result<MountValues>): Result<MountValues> {
  const worksheet = new Worksheet()
  worksheet.include(arrangement)
  worksheet.include(mounts)
  return worksheet.result(mounts.values)
}
