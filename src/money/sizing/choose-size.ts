import { StageError, Worksheet, type Result } from '../../worksheet/index.js'
import { billYearOf, savingsCurve, type BillYearValues } from '../bill/index.js'
import { capLoan, cashFlow, outputShare, readFinance, readIncentives, type FinanceTerms } from '../cash-flow/index.js'
import { paybackMeaning, yearScales, worthOf, type Worth } from '../payback/index.js'
import { withPricesInCurves, yearCurves, yearsAhead } from '../years/index.js'
import { pickSizes } from './pick-sizes.js'
import type { ChooseSizeInput, ChooseSizeValues, SizeCandidate, SizeRow } from './size-types.js'
import { whatChanges } from './what-changes.js'
import type { Dollars, KilowattHours } from '../../values/index.js'

const cents = (usd: Dollars): number => Math.round(usd * 100) / 100

interface Evaluated {
  readonly candidate: SizeCandidate
  readonly annualKwh: KilowattHours
  readonly bills: BillYearValues
  readonly savingsUsd: Dollars
  readonly netCostUsd: Dollars
  readonly worth: Worth
}

function evaluate(input: ChooseSizeInput, terms: FinanceTerms, candidate: SizeCandidate, without: number): Evaluated {
  const { sheet, usageKwh, calendar, incentives } = input
  const finance = capLoan(input.finance, candidate.grossCostUsd)
  const sheetWithSystem = input.sheetWithSystem ?? sheet
  const energy = { kind: 'hourly' as const, usageKwh, productionKwh: candidate.productionKwh }
  const bills = billYearOf(sheetWithSystem, energy, calendar)
  const curve = savingsCurve({ sheet, sheetWithSystem, energy, calendar, extraScales: yearScales(terms), grid: [] })
  const years = yearsAhead({
    sheet,
    sheetWithSystem,
    energy,
    usageOf: input.usageOf,
    calendar,
    terms,
    baseYear: finance.base_year,
    scalesOf: (year) => [outputShare(terms, year)],
  })
  const inYears = years === undefined ? { terms } : { terms: withPricesInCurves(terms), curves: yearCurves(years) }
  const annualKwh = candidate.productionKwh.reduce((a, b) => a + b, 0)
  const { grossCostUsd, dcRatingW } = candidate
  const flow = cashFlow({ curve, ...inYears, firstYearKwh: annualKwh, grossCostUsd, dcRatingW, finance, incentives })
  const lumps = flow.incentives.lumps.reduce((a, b) => a + b, 0)
  return {
    candidate,
    annualKwh,
    bills,
    savingsUsd: cents(without - bills.total_usd),
    netCostUsd: grossCostUsd - lumps,
    worth: worthOf(flow, terms),
  }
}

/**
 * Cost, savings and worth of every size, what the last modules replace, and which size is best by which yardstick.
 *
 * @throws StageError without candidates or when they are not in ascending order, and as `computeBill`.
 */
export function chooseSize(input: ChooseSizeInput): Result<ChooseSizeValues> {
  const worksheet = new Worksheet()
  const { candidates, sheet, usageKwh, calendar } = input
  refuseCandidates(input)
  const terms = readFinance(input.finance, worksheet, input.degradationPct)
  const [smallest] = candidates
  if (smallest !== undefined) readIncentives(input.incentives, smallest, worksheet)
  const without = billYearOf(sheet, { kind: 'hourly', usageKwh }, calendar)
  const evaluated = candidates.map((candidate) => evaluate(input, terms, candidate, without.total_usd))
  const sizes = sizeRows(evaluated, without)
  for (const row of sizes) recordSize(row, terms, worksheet)
  tellCappedLoans(input, worksheet)
  const picks = pickSizes(sizes, input.wishedSharePct)
  tellBest(picks.best_npv, input, worksheet)
  return worksheet.result({
    sizes,
    picks,
    payback_means: paybackMeaning(input.finance),
    stopped_by: input.stoppedBy,
    wished_share_pct: input.wishedSharePct ?? null,
  })
}

function refuseCandidates({ candidates, stoppedBy }: ChooseSizeInput): void {
  if (candidates.length === 0) {
    throw new StageError(
      'roof_planes',
      `no module fits: ${stoppedBy} stops it`,
      'Look at the roof planes and their setbacks.',
    )
  }
  if (candidates.some((one, i) => i > 0 && one.modules <= (candidates[i - 1]?.modules ?? 0))) {
    throw new Error('sizes must be in ascending order of modules')
  }
}

/** Each size beside the one below it; the first beside no system at all. */
function sizeRows(evaluated: readonly Evaluated[], without: BillYearValues): SizeRow[] {
  const widest = Math.max(...evaluated.map((one) => Math.abs(one.worth.npvUsd)), 1e-9)
  return evaluated.map((one, i): SizeRow => {
    const before = evaluated[i - 1]
    const kwh = one.annualKwh - (before?.annualKwh ?? 0)
    const savings = one.savingsUsd - (before?.savingsUsd ?? 0)
    return {
      modules: one.candidate.modules,
      branches: one.candidate.branches ?? null,
      annual_kwh: Number(one.annualKwh.toFixed(1)),
      share_of_use_pct: without.usage_kwh > 0 ? Number(((100 * one.annualKwh) / without.usage_kwh).toFixed(2)) : 0,
      net_cost_usd: cents(one.netCostUsd),
      first_year_savings_usd: one.savingsUsd,
      payback_years: one.worth.simple.lasting === undefined ? null : Number(one.worth.simple.lasting.toFixed(2)),
      npv_usd: cents(one.worth.npvUsd),
      npv_bar: (one.worth.npvUsd < 0 ? '-' : '#').repeat(Math.round((30 * Math.abs(one.worth.npvUsd)) / widest)),
      marginal: {
        modules: one.candidate.modules - (before?.candidate.modules ?? 0),
        kwh: Number(kwh.toFixed(1)),
        savings_usd: cents(savings),
        usd_per_kwh: kwh > 0 ? Number((savings / kwh).toFixed(4)) : null,
        cost_usd: cents(one.netCostUsd - (before?.netCostUsd ?? 0)),
        npv_usd: cents(one.worth.npvUsd - (before?.worth.npvUsd ?? 0)),
        replaces: whatChanges(before?.bills ?? without, one.bills),
      },
    }
  })
}

function recordSize(row: SizeRow, terms: FinanceTerms, worksheet: Worksheet): void {
  worksheet.step({
    id: `size.${String(row.modules)}.npv`,
    says: `Net present value of ${String(row.modules)} modules`,
    formula: 'NPV = sum_{t=0..n} CF_t / (1 + d)^t',
    inputs: [
      { symbol: 'net cost', value: row.net_cost_usd, unit: 'USD', from: 'bill of materials and incentives' },
      {
        symbol: 'savings of year 1',
        value: row.first_year_savings_usd,
        unit: 'USD',
        from: 'bills without minus with',
      },
      { symbol: 'd', value: terms.realDiscount, unit: '1/year, real', from: 'finance.discount_rate_pct' },
      { symbol: 'n', value: terms.years, unit: 'years', from: 'finance.years' },
    ],
    result: { symbol: 'NPV', value: row.npv_usd, unit: 'USD' },
    source: { document: '10 CFR 436', place: '436.20', standing: 'read' },
  })
}

function tellBest(bestNpv: number | null, { candidates, stoppedBy }: ChooseSizeInput, worksheet: Worksheet): void {
  if (bestNpv !== null && bestNpv === candidates.at(-1)?.modules) {
    worksheet.find({
      severity: 'note',
      id: 'size.limit-reached',
      message: `the largest size has the best net present value; ${stoppedBy} stops more`,
      where: 'roof_planes',
    })
  }
  if (bestNpv === null) {
    worksheet.find({
      severity: 'warning',
      id: 'size.none-pays',
      message: 'no size has a net present value above zero',
      where: 'finance',
    })
  }
}

function tellCappedLoans({ candidates, finance }: ChooseSizeInput, worksheet: Worksheet): void {
  const capped = candidates.filter(({ grossCostUsd }) => capLoan(finance, grossCostUsd) !== finance)
  const largest = capped.at(-1)
  if (largest === undefined) return
  worksheet.find({
    severity: 'note',
    id: 'size.loan-capped',
    message: `the loan of ${(finance.loan?.principal_usd ?? 0).toFixed(0)} USD is above the price of up to ${String(largest.modules)} modules; these sizes are reckoned with a loan of their whole price`,
    where: 'finance.loan.principal_usd',
  })
}
