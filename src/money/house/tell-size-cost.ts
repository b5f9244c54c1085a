import type { Project } from '../../project/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { SizeCandidate } from '../sizing/index.js'

/** Share of the price of the project that its size may cost otherwise before we say so. */
const COST_TOLERANCE = 0.15

/** Compares the price of the project with that of its size; a battery has a part of the first, where it is known. */
export function tellSizeCost(
  { finance, storage }: Project,
  candidates: readonly SizeCandidate[],
  inProject: number,
  worksheet: Worksheet,
): void {
  const quoted = finance?.installed_cost_usd
  const same = candidates.find(({ modules }) => modules === inProject)
  if (quoted === undefined || same === undefined) return
  const { count = 0, cost_usd_per_unit: each, cost_fixed_usd: fixed = 0 } = storage ?? {}
  if (count > 0 && each === undefined) return
  const battery = count > 0 ? fixed + count * (each ?? 0) : 0
  const modulesUsd = quoted - battery
  if (Math.abs(same.grossCostUsd - modulesUsd) <= COST_TOLERANCE * modulesUsd) return
  const less = battery > 0 ? `, ${modulesUsd.toFixed(0)} USD without its battery` : ''
  worksheet.find({
    severity: 'warning',
    id: 'size.cost-differs',
    message: `${String(inProject)} modules cost ${same.grossCostUsd.toFixed(0)} USD by cost_fixed_usd and cost_usd_per_module, but installed_cost_usd is ${quoted.toFixed(0)} USD${less}`,
    where: 'finance.cost_usd_per_module',
    fix: 'Make the two agree, or choose by the wrong price.',
  })
}
