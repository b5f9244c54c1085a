import type { House, HouseInput } from '../../house/index.js'
import { runHouse } from '../../house/index.js'
import type { PaybackValues } from '../../money/index.js'
import type { Project } from '../../project/index.js'
import { RULE_SETS, type RuleSet } from '../../tables/papers/index.js'
import type { Result } from '../../worksheet/index.js'
import { CAUTIOUS } from './cautious.js'
import type { SavingsLine, SavingsLines } from './proposal-values.js'

/** Rise of prices in the dollars of their day, percent a year; null where a published index is used. */
export function nominalRisePct({ real_escalation_pct, inflation_pct }: PaybackValues): number | null {
  if (real_escalation_pct === null) return null
  return 100 * ((1 + real_escalation_pct / 100) * (1 + inflation_pct / 100) - 1)
}

/** Payback of a house with another assumed rise of prices, with the same price and energy. */
export async function paybackAtRise(
  input: HouseInput,
  house: House,
  base: PaybackValues,
  nominalPct: number | undefined,
  cashBand = false,
): Promise<Result<PaybackValues>> {
  const real =
    nominalPct === undefined ? undefined : 100 * ((1 + nominalPct / 100) / (1 + base.inflation_pct / 100) - 1)
  const changed = real === undefined ? input.project : withRise(input.project, real)
  const run = await house.estimate()
  const wishes = { installedCostUsd: base.gross_cost_usd, cashBand }
  return await runHouse({ ...input, project: changed }, { runYield: () => run, wishes }).payback()
}

/** A rate stands in for a published index, and for all that is stated of prices to come. */
function withRise(project: Project, realPct: number): Project {
  const finance = { ...project.finance, electricity_escalation_pct: realPct }
  delete finance.electricity_price_index
  delete finance.price_path
  const tariff = project.tariff === undefined ? undefined : { ...project.tariff }
  delete tariff?.later
  return { ...project, finance, ...(tariff === undefined ? {} : { tariff }) }
}

/** Savings over the study at an unchanged price, at the assumed rise, and a point below and above it. */
export async function savingsLines(
  input: HouseInput,
  house: House,
  base: PaybackValues,
  ruleSet: RuleSet,
): Promise<SavingsLines> {
  const { mostRisePct, mostYears } = RULE_SETS[ruleSet]
  const years = Math.min(base.years, mostYears ?? base.years)
  const assumed = nominalRisePct(base)
  const line = async (kind: SavingsLine['kind'], pct: number): Promise<SavingsLine> => {
    const { values } = await paybackAtRise(input, house, base, pct)
    return lineOf(kind, pct, values, years)
  }
  const lines = [await line('unchanged', 0)]
  if (assumed !== null && assumed - 1 > 0) lines.push(await line('lower', assumed - 1))
  if (assumed === null || Math.abs(assumed) > 1e-9) lines.push(lineOf('assumed', assumed, base, years))
  if (assumed !== null && assumed + 1 <= (mostRisePct ?? Infinity)) lines.push(await line('higher', assumed + 1))
  return { years, money: base.money, lines }
}

function lineOf(kind: SavingsLine['kind'], risePct: number | null, values: PaybackValues, years: number): SavingsLine {
  const saved = values.cash_flow
    .filter(({ year }) => year >= 1 && year <= years)
    .reduce((sum, row) => sum + row.bill_savings_usd - row.maintenance_usd - row.insurance_usd - row.replacement_usd, 0)
  const gain = saved - costOfLoan(values, years)
  const { lasting_years: lasting } = values.simple_payback
  return {
    kind,
    rise_pct: risePct === null ? null : Number(risePct.toFixed(2)) + 0,
    saved_usd: CAUTIOUS.gainUsd(gain),
    payback_years: lasting === null ? null : CAUTIOUS.years(lasting),
  }
}

/** What is paid for a loan within some years beyond what it brings, its fee included; never a gain. */
function costOfLoan({ cash_flow: rows, gross_cost_usd: price }: PaybackValues, years: number): number {
  const first = rows[0]
  if (first === undefined || first.loan_received_usd === 0) return 0
  const paid = rows
    .filter(({ year }) => year <= years)
    .reduce((sum, row) => sum + row.loan_payment_usd + row.loan_payoff_usd, 0)
  const owed = rows.find(({ year }) => year === years)?.loan_owed_usd ?? 0
  const fee = Math.max(0, first.purchase_usd - price)
  return Math.max(0, paid + owed - first.loan_received_usd) + fee
}
