import { pmt } from 'financial'
import { curveThrough } from '../../src/money/bill/index.js'
import { describe, expect, it } from 'vitest'
import { cashFlow, incentiveFlows, loanPayments, readFinance } from '../../src/money/cash-flow/index.js'
import { netPresentValue } from '../../src/money/index.js'
import type { Finance, Incentive } from '../../src/project/index.js'
import { StageError, Worksheet } from '../../src/worksheet/index.js'

const curve = curveThrough(Float64Array.of(0, 2), (scale) => scale * 1000)
const entered = { name: 'Rebate (invented)', source: 'invented', checked: '2026-03-02' }
const flowOf = (finance: Finance, incentives: Record<string, Incentive> = {}) => {
  const terms = readFinance(finance, new Worksheet(), undefined)
  return {
    terms,
    ...cashFlow({ curve, firstYearKwh: 8000, grossCostUsd: 15_000, dcRatingW: 6000, finance, incentives, terms }),
  }
}
const plain: Finance = {
  years: 20,
  discount_rate_pct: 3,
  inflation_pct: 2.5,
  degradation_pct_per_year: 0,
  electricity_escalation_pct: 0,
}

describe('cash flow', () => {
  it('buys in year 0 and saves from year 1, with degradation and escalation', () => {
    const { rows } = flowOf({
      ...plain,
      degradation_pct_per_year: 1,
      electricity_escalation_pct: 2,
      maintenance_usd_per_year: 40,
    })
    expect(rows[0]!.netUsd).toBe(-15_000)
    // The first year's price is the base price escalated once, as the modified uniform present value has it.
    expect(rows[1]!.netUsd).toBeCloseTo(1000 * 1.02 - 40, 9)
    expect(rows[3]!.billSavingsUsd).toBeCloseTo(1000 * 0.99 ** 2 * 1.02 ** 3, 9)
    expect(rows[3]!.outputKwh).toBeCloseTo(8000 * 0.99 ** 2, 9)
  })

  it('has the same present value in real and in nominal money', () => {
    const rest: Finance = {
      replacements: [{ name: 'inverter', year: 12, usd: 1500 }],
      residual_usd: 500,
      insurance_usd_per_year: 30,
      loan: { principal_usd: 9000, apr_pct: 6.5, term_years: 10 },
    }
    const incentives: Record<string, Incentive> = { sale: { ...entered, kind: 'per_kwh', usd_per_kwh: 0.02, years: 5 } }
    const real = flowOf({ ...plain, ...rest }, incentives)
    const nominalPct = ((1 + 0.03) * (1 + 0.025) - 1) * 100
    const nominal = flowOf({ ...plain, ...rest, money: 'nominal', discount_rate_pct: nominalPct }, incentives)
    expect(nominal.terms.realDiscount).toBeCloseTo(0.03, 12)
    expect(netPresentValue(nominal.net, nominalPct / 100)).toBeCloseTo(netPresentValue(real.net, 0.03), 6)
    expect(nominal.rows[12]!.replacementUsd).toBeCloseTo(1500 * 1.025 ** 12, 9)
    expect(real.rows[5]!.performanceUsd).toBeCloseTo((8000 * 0.02) / 1.025 ** 5, 9)
  })

  it('puts replacements and the residual value with the investment', () => {
    const { flows } = flowOf({ ...plain, replacements: [{ name: 'inverter', year: 12, usd: 1500 }], residual_usd: 500 })
    expect(flows.investment[12]).toBe(1500)
    expect(flows.investment[20]).toBe(-500)
    expect(flows.operating[12]).toBe(1000)
  })

  it('follows the published price index from the year of purchase', () => {
    const { rows } = flowOf({
      years: 3,
      discount_rate_pct: 3,
      inflation_pct: 0,
      degradation_pct_per_year: 0,
      base_year: 2026,
      electricity_price_index: 'Pacific',
    })
    // NIST 2025: Pacific 0.8635 in 2026, 0.7927 in 2027, 0.7906 in 2029
    expect(rows[1]!.billSavingsUsd).toBeCloseTo((1000 * 0.7927) / 0.8635, 9)
    expect(rows[3]!.billSavingsUsd).toBeCloseTo((1000 * 0.7906) / 0.8635, 9)
  })

  it('refuses a study beyond the index, and escalation stated twice', () => {
    const message = (finance: Finance): string => {
      try {
        flowOf(finance)
      } catch (error) {
        if (error instanceof StageError) return error.message
      }
      return 'accepted'
    }
    expect(message({ years: 40, electricity_price_index: 'Pacific' })).toBe(
      'the published index ends in 2060, before year 35 of the study',
    )
    expect(message({ electricity_escalation_pct: 1, electricity_price_index: 'Pacific' })).toMatch(/both stated/)
  })

  it('records every default', () => {
    const worksheet = new Worksheet()
    readFinance({}, worksheet, undefined)
    const { assumptions } = worksheet.result(null)
    expect(assumptions.map((one) => one.path)).toEqual([
      'finance.years',
      'finance.replacements',
      'finance.maintenance_usd_per_year',
      'finance.insurance_usd_per_year',
      'finance.other_income_usd_per_year',
      'finance.residual_usd',
      'finance.money',
      'finance.inflation_pct',
      'finance.discount_rate_pct',
      'finance.electricity_escalation_pct',
      'finance.degradation_pct_per_year',
    ])
    expect(assumptions.find((one) => one.path === 'finance.electricity_escalation_pct')).toMatchObject({ value: 0 })
    expect(assumptions.find((one) => one.path === 'finance.electricity_escalation_pct')?.why).toContain(
      '-0.49 (New England) to +0.09',
    )
  })
})

describe('loan', () => {
  it('equal monthly payments, against a finance library', () => {
    const yearly = loanPayments({ principal_usd: 10_000, apr_pct: 6.5, term_years: 15 })
    expect(yearly.length).toBe(15)
    expect(yearly[0]).toBeCloseTo(-12 * pmt(0.065 / 12, 180, 10_000), 8)
    expect(loanPayments({ principal_usd: 1200, apr_pct: 0, term_years: 2 })).toEqual([600, 600])
  })
})

describe('incentives', () => {
  const basis = { grossCostUsd: 30_000, dcRatingW: 8000, outputKwh: [0, 10_000, 9900, 9800, 9700] }

  it('historic law before 2026: 30 % of 30,000 is 9,000 (CRS IN12611)', () => {
    const credit: Incentive = {
      ...entered,
      kind: 'tax_credit',
      percent: 30,
      refundable: false,
      tax_liability_usd_per_year: 20_000,
    }
    expect(incentiveFlows({ credit }, basis).lumps).toEqual([0, 9000, 0, 0, 0])
  })

  it('a nonrefundable credit carries forward, and what finds no tax is said', () => {
    const credit: Incentive = {
      ...entered,
      kind: 'tax_credit',
      percent: 30,
      tax_liability_usd_per_year: 2000,
      year_received: 1,
    }
    const flows = incentiveFlows({ credit }, basis)
    expect(flows.lumps).toEqual([0, 2000, 2000, 2000, 2000])
    expect(flows.unusedCreditUsd).toBe(1000)
  })

  it('a rebate on cost is taken off the basis of the credit, whatever the order in the file', () => {
    const flows = incentiveFlows(
      {
        credit: { ...entered, kind: 'tax_credit', percent: 30, refundable: true },
        rebate: { ...entered, kind: 'per_watt', usd_per_w: 0.5, cap_usd: 3000, reduces_cost_basis: true },
      },
      basis,
    )
    expect(flows.lumps).toEqual([3000, 0.3 * 27_000, 0, 0, 0])
  })

  it('taxable ones are reduced by the marginal rate; payments per kWh stop with their years and their cap', () => {
    const flows = incentiveFlows(
      {
        grant: { ...entered, kind: 'share_of_cost', percent: 10, taxable: true, marginal_tax_rate_pct: 22 },
        sale: { ...entered, kind: 'per_kwh', usd_per_kwh: 0.05, years: 3, cap_usd: 1200 },
      },
      basis,
    )
    expect(flows.lumps[0]).toBeCloseTo(2340, 9)
    expect(flows.perKwh[1]).toBe(500)
    expect(flows.perKwh[2]).toBe(495)
    expect(flows.perKwh[3]).toBeCloseTo(205, 9)
    expect(flows.perKwh[4]).toBe(0)
  })

  it.each<[string, Incentive, string]>([
    ['an amount that is missing', { ...entered, kind: 'upfront' }, 'an incentive of kind upfront needs amount_usd'],
    [
      'a tax rate that is missing',
      { ...entered, kind: 'upfront', amount_usd: 1, taxable: true },
      'an incentive of kind upfront needs marginal_tax_rate_pct',
    ],
    [
      'a nonrefundable credit without tax',
      { ...entered, kind: 'tax_credit', percent: 30 },
      'an incentive of kind tax_credit needs tax_liability_usd_per_year',
    ],
    [
      'a year after the study',
      { ...entered, kind: 'upfront', amount_usd: 1, year_received: 9 },
      'year 9 is after the study of 4 years',
    ],
  ])('refuses %s', (_, incentive, message) => {
    expect(() => incentiveFlows({ one: incentive }, basis)).toThrow(message)
  })
})
