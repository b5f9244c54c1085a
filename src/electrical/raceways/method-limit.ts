import type { WiringMethodRow } from '../../tables/nec/index.js'
import type { AmpacityLimit } from '../conductors/index.js'
import type { Job } from '../system/index.js'

/**
 * Column that a method holds the final ampacity to.
 *
 * @param inInsulation Whether it touches thermal insulation.
 * @source NEC 334.80, 340.80, 338.10(B)(4), 320.80(A)
 */
export function limitOfMethod(job: Job, method: WiringMethodRow, inInsulation: boolean): AmpacityLimit | undefined {
  if (method.limitC !== undefined) return { columnC: method.limitC, toSize: undefined }
  const inside = method.limitInInsulation
  if (!inInsulation || inside === undefined) return undefined
  return { columnC: inside.columnC, toSize: inside.allSizesIn.includes(job.edition) ? undefined : inside.toSize }
}
