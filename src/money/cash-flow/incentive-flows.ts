import type { Incentive } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'
import { amountUsd } from './read-incentives.js'
import type { Dollars, KilowattHours, Watts } from '../../values/index.js'

/** What incentives bring, after tax on them, nominal USD, year 0 first. */
export interface IncentiveFlows {
  /** Amounts that arrive once, and tax credits. */
  readonly lumps: readonly number[]
  /** Payments per kWh. */
  readonly perKwh: readonly KilowattHours[]
  /** Year by year for each incentive id. */
  readonly byId: Readonly<Record<string, readonly number[]>>
  /** Tax credit that no year's tax could use. */
  readonly unusedCreditUsd: Dollars
}

/** Basis of the incentives. */
export interface IncentiveBasis {
  readonly grossCostUsd: Dollars
  readonly dcRatingW: Watts
  /** Output by year, year 0 first (0), kWh. */
  readonly outputKwh: readonly KilowattHours[]
}

/** Amount that a kind of incentive needs. @throws StageError when it is not stated. */
function needed(id: string, key: keyof Incentive, incentive: Incentive): number {
  const value = incentive[key]
  if (typeof value === 'number') return value
  throw new StageError(
    `incentives.${id}.${key}`,
    `an incentive of kind ${incentive.kind} needs ${key}`,
    'Read it from the page of the programme.',
  )
}

function capped(incentive: Incentive, usd: Dollars): number {
  return Math.min(usd, incentive.cap_usd ?? usd)
}

/** Share that is left after income tax. */
function afterTax(id: string, incentive: Incentive): number {
  return incentive.taxable === true ? 1 - needed(id, 'marginal_tax_rate_pct', incentive) / 100 : 1
}

/** Key that holds the amount of a kind that arrives once. */
const AMOUNT_KEY = { upfront: 'amount_usd', per_watt: 'usd_per_w', share_of_cost: 'percent' } as const

function lumpUsd(id: string, incentive: Incentive, kind: keyof typeof AMOUNT_KEY, basis: IncentiveBasis): Dollars {
  needed(id, AMOUNT_KEY[kind], incentive)
  return amountUsd(incentive, basis)
}

/** A nonrefundable credit is used up to the tax of each year and carried forward. */
function creditRow(id: string, incentive: Incentive, credit: number, years: number): { row: number[]; unused: number } {
  const first = incentive.year_received ?? 1
  let left = credit
  const row = Array.from({ length: years + 1 }, (_, t) => {
    if (t < first || left === 0) return 0
    const used =
      incentive.refundable === true ? left : Math.min(left, needed(id, 'tax_liability_usd_per_year', incentive))
    left -= used
    return used
  })
  return { row, unused: left }
}

function performanceRow(id: string, incentive: Incentive, basis: IncentiveBasis): number[] {
  const price = needed(id, 'usd_per_kwh', incentive)
  const first = Math.max(1, incentive.year_received ?? 1)
  const last = first + needed(id, 'years', incentive) - 1
  let left = incentive.cap_usd ?? Infinity
  return basis.outputKwh.map((kwh, t) => {
    if (t < first || t > last) return 0
    const paid = Math.min(left, price * kwh)
    left -= paid
    return paid * afterTax(id, incentive)
  })
}

/**
 * Works out what each incentive brings, in the order: amounts first, then tax credits on the basis that they leave.
 *
 * @throws StageError when a kind lacks its amount, a taxable one its tax rate, or a nonrefundable credit the tax it reduces.
 * @source IRS FAQ FS-2024-15 Q4: a rebate based on cost and not paid for services is subtracted from the basis of a credit
 */
export function incentiveFlows(incentives: Readonly<Record<string, Incentive>>, basis: IncentiveBasis): IncentiveFlows {
  const years = basis.outputKwh.length - 1
  const zeros = (): number[] => basis.outputKwh.map(() => 0)
  const lumps = zeros()
  const perKwh = zeros()
  const byId: Record<string, number[]> = {}
  let creditBasis = basis.grossCostUsd
  let unusedCreditUsd = 0
  const record = (id: string, into: number[], row: number[]): void => {
    byId[id] = row
    for (const [t, usd] of row.entries()) into[t] = (into[t] ?? 0) + usd
  }
  for (const [id, incentive] of Object.entries(incentives)) {
    const { kind, year_received: year = 0 } = incentive
    if (year > years) {
      const message = `year ${String(year)} is after the study of ${String(years)} years`
      throw new StageError(`incentives.${id}.year_received`, message, 'Study more years, or remove the incentive.')
    }
    if (kind === 'per_kwh') record(id, perKwh, performanceRow(id, incentive, basis))
    if (kind === 'per_kwh' || kind === 'tax_credit') continue
    const usd = lumpUsd(id, incentive, kind, basis)
    if (incentive.reduces_cost_basis === true) creditBasis -= usd
    record(
      id,
      lumps,
      zeros().map((_, t) => (t === year ? usd * afterTax(id, incentive) : 0)),
    )
  }
  for (const [id, incentive] of Object.entries(incentives)) {
    if (incentive.kind !== 'tax_credit') continue
    const credit = capped(incentive, (needed(id, 'percent', incentive) / 100) * Math.max(0, creditBasis))
    const { row, unused } = creditRow(id, incentive, credit, years)
    unusedCreditUsd += unused
    record(id, lumps, row)
  }
  return { lumps, perKwh, byId, unusedCreditUsd }
}
