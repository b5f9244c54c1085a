import type { BomValues } from '../../materials/index.js'
import type { ListPrice, SizeOptions } from '../../money/index.js'
import type { Project } from '../../project/index.js'
import type { Result } from '../../worksheet/index.js'

/**
 * What sizes cost by the price list of a project.
 *
 * @returns undefined when prices are stated, or there is no list.
 * @throws StageError when the list lacks prices.
 */
export async function listPriceOf(
  project: Project,
  stated: SizeOptions = {},
  bom: () => Promise<Result<BomValues>>,
): Promise<ListPrice | undefined> {
  const perModule = stated.usdPerModule ?? project.finance?.cost_usd_per_module
  const fixed = stated.fixedUsd ?? project.finance?.cost_fixed_usd
  if ((perModule !== undefined && fixed !== undefined) || project.materials?.price_list === undefined) return undefined
  const { listPriceFrom } = await import('../../money/index.js')
  return listPriceFrom((await bom()).values)
}
