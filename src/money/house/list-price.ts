import type { BillGroup, BomValues } from '../../materials/index.js'
import { StageError } from '../../worksheet/index.js'
import type { ListPrice } from './sizes-of-project.js'

/** What a further module brings with it; inverters only where there is about one a module. */
const BY_MODULE: readonly BillGroup[] = ['modules', 'trunk', 'racking', 'roof', 'grounding']

/**
 * What sizes cost by the bill of a project: what grows with the modules by module, with its share of tax and margin, and
 * all else as fixed.
 *
 * @throws StageError when the bill lacks prices.
 */
export function listPriceFrom({ lines, totals, complete, supplier }: BomValues): ListPrice {
  const sumOf = (wanted: (group: BillGroup) => boolean, of: 'quantity' | 'cost_usd'): number =>
    lines.reduce((all, line) => (wanted(line.group) ? all + (line[of] ?? 0) : all), 0)
  const modules = sumOf((group) => group === 'modules', 'quantity')
  const { gross_usd: gross, tax_usd: tax, margin_usd: margin } = totals
  if (gross === null || !complete || !(modules > 0))
    throw new StageError(
      'materials.price_list',
      'the price list does not give the whole bill, so sizes have no price',
      'Complete it (price-bom tells what is missing), or state finance.cost_fixed_usd and finance.cost_usd_per_module.',
    )
  const each = sumOf((group) => group === 'inverters', 'quantity') * 2 >= modules
  const grows = (group: BillGroup): boolean => BY_MODULE.includes(group) || (each && group === 'inverters')
  const added = (tax ?? 0) + (margin ?? 0)
  const growing = (sumOf(grows, 'cost_usd') * gross) / (gross - added)
  const cents = (usd: number): number => Math.round(usd * 100) / 100
  const usdPerModule = cents(growing / modules)
  return { usdPerModule, fixedUsd: cents(gross - usdPerModule * modules), modules, supplier: supplier ?? 'the project' }
}
