import type { BomValues } from '../../materials/index.js'
import { billsOfProject, paybackOfProject, type PaybackValues, type SavingsValues } from '../../money/index.js'
import type { Finding, Result } from '../../worksheet/index.js'
import type { YieldRun } from '../../yield/index.js'
import { totalOf } from '../bill-total.js'
import type { HouseInput } from '../house-input.js'
import type { Dollars } from '../../values/index.js'

/** The price of a house: the first that is there counts, and the project's own comes before the bill. */
export interface PriceSources {
  /** Price before incentives, USD. */
  readonly installedCostUsd?: Dollars | undefined
  readonly bom?: Result<BomValues> | undefined
  readonly cashBand?: boolean | undefined
  readonly brief?: boolean | undefined
  readonly optimum?: boolean | undefined
}

/**
 * Payback at the stated price, else at the total of the bill of materials; a bill that gives way is told as a note.
 *
 * @throws StageError when price, tariff, use or a part of the energy estimate is missing.
 */
export function paybackAt(
  { project, files }: HouseInput,
  estimate: () => YieldRun,
  { installedCostUsd, bom, cashBand = false, optimum = false, brief = false }: PriceSources,
): Result<PaybackValues> {
  const totalUsd = bom === undefined ? undefined : totalOf(bom)
  const isStated = (installedCostUsd ?? project.finance?.installed_cost_usd) !== undefined
  const result = paybackOfProject(project, files, {
    estimate,
    cashBand,
    brief,
    optimum,
    ...(installedCostUsd === undefined ? {} : { installedCostUsd }),
    ...(isStated || totalUsd === undefined || totalUsd === null ? {} : { billOfMaterialsUsd: totalUsd }),
  })
  return isStated && totalUsd !== undefined ? withUnused(result, totalUsd) : result
}

/** The bills alone, which tell what is wrong with tariff and use before there is a price. */
export function utilityBills({ project, files }: HouseInput, estimate: () => YieldRun): Result<SavingsValues> {
  return billsOfProject(project, files, estimate)
}

function withUnused(result: Result<PaybackValues>, unusedUsd: Dollars | null): Result<PaybackValues> {
  const total = unusedUsd === null ? '' : ` of ${unusedUsd.toFixed(0)} USD`
  const note: Finding = {
    severity: 'note',
    id: 'payback.bom-not-used',
    message: `the stated price of ${result.values.gross_cost_usd.toFixed(0)} USD is taken, not the bill of materials${total}`,
    where: 'finance.installed_cost_usd',
    fix: 'Leave the price away to use the bill of materials.',
  }
  return { ...result, findings: [...result.findings, note] }
}
