import type { BomValues } from '../../materials/index.js'
import { loanPayments, type PaybackValues } from '../../money/index.js'
import type { Project } from '../../project/index.js'
import { CAUTIOUS, upTo } from './cautious.js'
import type { CostLine, CostValues, LoanValues } from './proposal-values.js'

type Detail = CostValues['detail']

/** What it costs: the price before incentives comes first, with the bill of materials as deep as the installer tells it. */
export function costValues(
  project: Project,
  payback: PaybackValues,
  bom: BomValues | undefined,
  detail: Detail,
  groupName: (group: string) => string,
): CostValues {
  const lines =
    bom === undefined || detail === 'total' ? [] : detail === 'lines' ? allLines(bom) : byGroup(bom, groupName)
  const listed = lines.reduce((sum, { usd }) => sum + usd, 0)
  return {
    gross_usd: payback.gross_cost_usd,
    detail,
    lines,
    rest_usd: lines.length === 0 ? null : Number((payback.gross_cost_usd - listed).toFixed(2)) + 0,
    incentives: Object.values(project.incentives ?? {}).map(({ name, source, checked }) => ({ name, source, checked })),
    incentives_usd: CAUTIOUS.gainUsd(payback.incentives_usd),
    net_usd: CAUTIOUS.costUsd(payback.net_cost_usd),
  }
}

function allLines({ lines }: BomValues): CostLine[] {
  return lines.flatMap(({ name, quantity, unit, cost_usd }) =>
    cost_usd === null ? [] : [{ name, quantity: `${quantity} ${unit}`, usd: cost_usd }],
  )
}

function byGroup({ lines }: BomValues, groupName: (group: string) => string): CostLine[] {
  const sums = new Map<string, number>()
  for (const { group, cost_usd } of lines) sums.set(group, (sums.get(group) ?? 0) + (cost_usd ?? 0))
  return [...sums].map(([group, usd]) => ({ name: groupName(group), quantity: '', usd: Number(usd.toFixed(2)) }))
}

/** The loan with all that it costs, nominal USD; null without one. */
export function loanValues(project: Project, payback: PaybackValues): LoanValues | null {
  const loan = project.finance?.loan
  if (loan === undefined) return null
  const fee = loan.dealer_fee_usd ?? 0
  const total = loanPayments(loan).reduce((sum, usd) => sum + usd, 0)
  const down = Math.max(0, payback.gross_cost_usd + fee - loan.principal_usd)
  return {
    principal_usd: loan.principal_usd,
    apr_pct: loan.apr_pct,
    term_years: loan.term_years,
    fee_usd: fee,
    payment_usd_per_month: upTo(0.01, total / (12 * loan.term_years)),
    total_of_payments_usd: CAUTIOUS.costUsd(total),
    down_usd: CAUTIOUS.costUsd(down),
    cash_price_usd: payback.gross_cost_usd,
    financed_price_usd: CAUTIOUS.costUsd(down + total),
  }
}
