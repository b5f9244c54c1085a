import type { Finance, Incentive } from '../../project/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import type { KilowattHours } from '../../values/index.js'

/** A lease or a power purchase: somebody else owns the system. */
export interface ThirdParty {
  readonly kind: 'lease' | 'power_purchase'
  /** Of the first year: USD per year for a lease, USD/kWh for a power purchase; tax included. */
  readonly firstYearUsd: number
  /** Rise from year to year, fraction. */
  readonly rise: number
  readonly termYears: number
  readonly atEnd: { readonly system: 'removed' | 'bought'; readonly usd: number } | undefined
  /** Output of the first year, kWh, its fall, fraction, and the credit for a kWh below it, USD in money of the year. */
  readonly guarantee:
    | { readonly firstYearKwh: KilowattHours; readonly fall: number; readonly usdPerKwh: number }
    | undefined
  /** Prices of buying the system during the term, USD in money of the year. */
  readonly buyouts: readonly { readonly afterYear: number; readonly usd: number }[]
}

/** The contract under which somebody else owns the system; undefined when the customer buys it. */
export function thirdPartyOf(finance: Finance): ThirdParty | undefined {
  const { lease, power_purchase: purchase } = finance
  const stated = lease ?? purchase
  if (stated === undefined) return undefined
  const { production_guarantee: guarantee, buyout_by_year: buyouts = [] } = stated
  const first = lease === undefined ? (purchase?.usd_per_kwh ?? 0) : 12 * lease.usd_per_month
  return {
    kind: lease === undefined ? 'power_purchase' : 'lease',
    firstYearUsd: first * (1 + (stated.tax_pct ?? 0) / 100),
    rise: stated.rise_pct_per_year / 100,
    termYears: stated.term_years,
    atEnd: stated.at_end === undefined ? undefined : { system: stated.at_end.system, usd: stated.at_end.usd ?? 0 },
    guarantee:
      guarantee === undefined
        ? undefined
        : {
            firstYearKwh: guarantee.kwh_first_year,
            fall: guarantee.fall_pct_per_year / 100,
            usdPerKwh: guarantee.usd_per_kwh_short,
          },
    buyouts: buyouts.map(({ after_year: afterYear, usd }) => ({ afterYear, usd })),
  }
}

/**
 * Payments of each year in money of that year: `p (1 + e)^(t - 1)` a year, or a kWh of that year's output.
 *
 * @param outputKwh Output by year, year 0 first (0).
 * @returns USD, year 0 first (0); none after the term.
 */
export function contractPayments(contract: ThirdParty, outputKwh: readonly KilowattHours[]): number[] {
  return outputKwh.map((kwh, t) => {
    if (t === 0 || t > contract.termYears) return 0
    const price = contract.firstYearUsd * (1 + contract.rise) ** (t - 1)
    return contract.kind === 'lease' ? price : price * kwh
  })
}

/** Output that is guaranteed in each year of the term, kWh, year 0 first (0); none after it. */
export function guaranteedKwh({ guarantee, termYears }: ThirdParty, years: number): number[] {
  return Array.from({ length: years + 1 }, (_, t) =>
    guarantee === undefined || t === 0 || t > termYears ? 0 : guarantee.firstYearKwh * (1 - guarantee.fall) ** (t - 1),
  )
}

/** Credits for output below the guarantee by year, USD of that year, year 0 first (0). */
export function guaranteeCredits(contract: ThirdParty, outputKwh: readonly KilowattHours[]): number[] {
  const guaranteed = guaranteedKwh(contract, outputKwh.length - 1)
  const usdPerKwh = contract.guarantee?.usdPerKwh ?? 0
  return outputKwh.map((kwh, t) => Math.max(0, (guaranteed[t] ?? 0) - kwh) * usdPerKwh)
}

/** Whether the system is still on the roof in a year of the cash flow. */
export function isThere(contract: ThirdParty | undefined, year: number): boolean {
  return contract === undefined || year <= contract.termYears || contract.atEnd?.system === 'bought'
}

/** Keys that only who buys the system has. */
const OF_BUYERS = ['loan', 'installed_cost_usd', 'residual_usd'] as const

/**
 * Checks what stands beside a lease or a power purchase, and tells what the study leaves out of it.
 *
 * @throws StageError for two contracts, what only a buyer has, incentives, or a contract that ends before the study without a word
 * of what happens then.
 */
export function checkThirdParty(
  finance: Finance,
  incentives: Readonly<Record<string, Incentive>>,
  years: number,
  worksheet: Worksheet,
): void {
  const contract = thirdPartyOf(finance)
  if (contract === undefined) return
  const where = `finance.${contract.kind}`
  const says = contract.kind === 'lease' ? 'a lease' : 'a power purchase'
  if (finance.lease !== undefined && finance.power_purchase !== undefined) {
    throw new StageError('finance.power_purchase', 'a lease and a power purchase are both stated', 'Keep one of them.')
  }
  const bought = OF_BUYERS.find((key) => finance[key] !== undefined)
  if (bought !== undefined) {
    throw new StageError(
      `finance.${bought}`,
      `${bought} belongs to a system that the customer buys, and ${says} is stated`,
      `Take ${bought} or ${contract.kind} out.`,
    )
  }
  const [incentive] = Object.keys(incentives)
  if (incentive !== undefined) {
    throw new StageError(
      `incentives.${incentive}`,
      `incentives go to the owner of the system, and under ${says} that is not the customer`,
      'Take the incentives out; what the owner passes on is in the payments of the offer.',
    )
  }
  checkBuyouts(contract, where)
  if (contract.termYears < years && contract.atEnd === undefined) {
    throw new StageError(
      `${where}.at_end`,
      `${says} ends after ${String(contract.termYears)} years, and the study goes on to year ${String(years)}`,
      'State at_end: { system: removed } or { system: bought, usd: PRICE }, or study no more years than the term (finance.years).',
    )
  }
  if (contract.termYears > years) {
    const last = contract.firstYearUsd * (1 + contract.rise) ** years
    const unit = contract.kind === 'lease' ? 'USD a year' : 'USD/kWh'
    worksheet.find({
      severity: 'warning',
      id: 'payback.contract-outlives-study',
      message: `${says} runs ${String(contract.termYears)} years and the study ${String(years)}; its payments of ${String(contract.termYears - years)} more years, ${last.toFixed(contract.kind === 'lease' ? 2 : 4)} ${unit} in the next one, are not counted`,
      where: `${where}.term_years`,
      fix: 'Study as many years as the contract runs (finance.years).',
    })
  }
}

/** @throws StageError for prices after the term, twice for one year, or another one at its end than `at_end` says. */
function checkBuyouts({ buyouts, termYears, atEnd }: ThirdParty, where: string): void {
  for (const [i, { afterYear, usd }] of buyouts.entries()) {
    const at = `${where}.buyout_by_year.${String(i)}`
    if (afterYear > termYears) {
      throw new StageError(
        `${at}.after_year`,
        `year ${String(afterYear)} is after the term of ${String(termYears)} years`,
        'State years of the term alone.',
      )
    }
    if (buyouts.findIndex((one) => one.afterYear === afterYear) < i)
      throw new StageError(`${at}.after_year`, `year ${String(afterYear)} has two prices`, 'Keep one of them.')
    if (afterYear === termYears && atEnd?.system === 'bought' && atEnd.usd !== usd) {
      throw new StageError(
        `${at}.usd`,
        `${usd.toFixed(2)} USD after the last year, and at_end says ${atEnd.usd.toFixed(2)} USD`,
        'State the same price, or leave this one out.',
      )
    }
  }
}
