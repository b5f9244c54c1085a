import { savingsReader } from '../bill/index.js'
import {
  curveOfYear,
  guaranteedKwh,
  isThere,
  outputShare,
  reportedDiscount,
  type CashFlow,
  type CashFlowInput,
} from '../cash-flow/index.js'
import { normalDeviates, sortReals, type Dollars } from '../../values/index.js'

/** Standard deviations as fractions, and the draw. */
export interface Spread {
  readonly seed: number
  readonly samples: number
  readonly yieldSigma: number
  readonly weatherSigma: number
  /** Of the real escalation rate, fraction per year. */
  readonly escalationSigma: number
  readonly costSigma: number
}

/** One entry per sample, ascending. */
export interface Samples {
  readonly npvUsd: Float64Array
  /** Simple payback for good, years; Infinity = not within the study. */
  readonly paybackYears: Float64Array
  /** Running sums by year from 0, not discounted; none unless asked for. */
  readonly runningUsd: readonly Float64Array[]
}

/**
 * Draws the long-term yield error, every year's weather, the escalation rate and the installed cost, and follows each draw
 * through all years of the cash flow.
 *
 * @limits Errors are normal and independent; bills between the nodes of the savings curve are interpolated; payments per
 * kWh follow output beyond their cap; incentives do not follow the drawn cost.
 */
export function drawCashFlows(input: CashFlowInput, central: CashFlow, spread: Spread, withRunning = false): Samples {
  const { terms } = input
  const { years } = terms
  const { contract } = central
  const perKwh = contract?.kind === 'power_purchase' ? 1 : 0
  const common = savingsReader(input.curve)
  const readers = Array.from({ length: years + 1 }, (_, t) =>
    input.curves === undefined || t === 0 ? common : savingsReader(curveOfYear(input, t)),
  )
  // Of each sample the long-term error, the drift of prices, the cost, and every year's weather.
  const perSample = 3 + years
  const deviates = normalDeviates(spread.seed, spread.samples * perSample)
  const discount = reportedDiscount(terms)
  // Everything that no draw changes, and the factors of what a draw does change, by year.
  const fixed = new Float64Array(years + 1)
  const performance = new Float64Array(years + 1)
  const price = new Float64Array(years + 1)
  const present = new Float64Array(years + 1)
  const share = new Float64Array(years + 1)
  const owed = new Float64Array(years + 1)
  // A guarantee pays in bad years alone, so that each draw has its own credit.
  const made = new Float64Array(years + 1)
  const credit = new Float64Array(years + 1)
  const guaranteed = contract === undefined ? [] : guaranteedKwh(contract, years)
  const fade = Float64Array.from({ length: years + 1 }, (_, t) => input.fadeUsd?.[t - 1] ?? 0)
  for (const row of central.rows) {
    const t = row.year
    // Payments for energy follow the output, to whom they go.
    const perOutput = row.performanceUsd - perKwh * row.contractUsd
    performance[t] = perOutput
    fixed[t] = row.netUsd - row.billSavingsUsd - perOutput - row.guaranteeUsd
    made[t] = row.outputKwh
    credit[t] = (contract?.guarantee?.usdPerKwh ?? 0) / (terms.money === 'real' ? (1 + terms.inflation) ** t : 1)
    const inflated = terms.money === 'real' ? 1 : (1 + terms.inflation) ** t
    price[t] = isThere(contract, t) ? (terms.priceIndex[t - 1] ?? 1) * inflated : 0
    present[t] = (1 + discount) ** -t
    share[t] = outputShare(terms, t)
    owed[t] = row.loanOwedUsd
  }
  const runningUsd = withRunning ? Array.from({ length: years + 1 }, () => new Float64Array(spread.samples)) : []
  const npvUsd = new Float64Array(spread.samples)
  const paybackYears = new Float64Array(spread.samples)
  for (let i = 0; i < spread.samples; i++) {
    const at = i * perSample
    const longTerm = 1 + spread.yieldSigma * deviates[at]!
    const drift = 1 + spread.escalationSigma * deviates[at + 1]!
    const cost = input.grossCostUsd * spread.costSigma * deviates[at + 2]!
    let sum = fixed[0]! - cost
    let npv = sum
    setAt(runningUsd, 0, i, sum)
    let growth = 1
    // Where the owner would stand after settling the loan.
    let settled = sum - owed[0]!
    let paidBack = settled >= 0 ? 0 : Infinity
    for (let t = 1; t <= years; t++) {
      growth *= drift
      const output = Math.max(0, longTerm * (1 + spread.weatherSigma * deviates[at + 2 + t]!))
      const saved = (readers[t]!(share[t]! * output) - fade[t]!) * price[t]! * growth
      const perKwhShort = credit[t]!
      const short = perKwhShort === 0 ? 0 : Math.max(0, (guaranteed[t] ?? 0) - made[t]! * output) * perKwhShort
      const flow = fixed[t]! + saved + performance[t]! * output + short
      npv += flow * present[t]!
      sum += flow
      if (withRunning) setAt(runningUsd, t, i, sum)
      const before = settled
      settled = sum - owed[t]!
      if (settled < 0) paidBack = Infinity
      else if (before < 0) paidBack = t - 1 - before / (settled - before)
    }
    npvUsd[i] = npv
    paybackYears[i] = paidBack
  }
  for (const sums of runningUsd) sortReals(sums)
  return { npvUsd: sortReals(npvUsd), paybackYears: sortReals(paybackYears), runningUsd }
}

function setAt(sums: readonly Float64Array[], year: number, sample: number, usd: Dollars): void {
  const ofYear = sums[year]
  if (ofYear !== undefined) ofYear[sample] = usd
}
