import { npv } from 'financial'
import { describe, expect, it } from 'vitest'
import { chooseSize, payback, readTariff, type PaybackInput } from '../../src/money/index.js'
import type { Finance, Incentive } from '../../src/project/index.js'
import { bell, calendar2025, even } from './hours.js'

const sheet = readTariff({
  name: 'R-1 (invented)',
  energy: { all_year: { usd_per_kwh: 0.2 } },
  rounding: 'line',
  solar: { net_metering: { settle: 'annual', true_up_month: 12 } },
})
const bare: Finance = {
  years: 25,
  money: 'real',
  discount_rate_pct: 3,
  inflation_pct: 2,
  electricity_escalation_pct: 0,
  degradation_pct_per_year: 0.5,
  installed_cost_usd: 20_000,
  uncertainty: { seed: 1, samples: 100 },
}
const stated: Finance = {
  ...bare,
  maintenance_usd_per_year: 0,
  insurance_usd_per_year: 0,
  other_income_usd_per_year: 0,
  residual_usd: 0,
  replacements: [],
}
const input = (finance: Finance, incentives: Record<string, Incentive> = {}): PaybackInput => ({
  sheet,
  energy: { kind: 'hourly', usageKwh: even(1), productionKwh: bell(2.5) },
  calendar: calendar2025,
  dcRatingW: 8000,
  finance,
  incentives,
})
const assumedOf = (result: ReturnType<typeof payback>) =>
  new Map(result.assumptions.map((one) => [one.path, one] as const))
const entered = { name: 'Programme (invented)', source: 'invented', checked: '2026-03-02' }

describe('costs that the project does not state', () => {
  it('are assumed to be none, and each is printed', () => {
    const assumed = assumedOf(payback(input(bare)))
    for (const key of [
      'maintenance_usd_per_year',
      'insurance_usd_per_year',
      'other_income_usd_per_year',
      'residual_usd',
    ])
      expect(assumed.get(`finance.${key}`)).toMatchObject({ value: 0 })
    expect(assumed.get('finance.replacements')).toMatchObject({ value: 'none' })
    expect(assumed.get('finance.replacements')?.source.standing).toBe('common practice, no source')
  })

  it('are no assumption when they are stated, even as nothing', () => {
    const assumed = assumedOf(payback(input(stated)))
    expect([...assumed.keys()].filter((path) => /^finance\.(?!uncertainty)/u.test(path))).toEqual([])
    expect(payback(input(stated)).findings.map(({ id }) => id)).not.toContain('payback.running-costs-missing')
  })

  it('are priced: the net present value with a typical inverter and upkeep is told', () => {
    const result = payback(input(bare))
    const told = result.findings.find(({ id }) => id === 'payback.running-costs-missing')
    expect(told).toMatchObject({ severity: 'warning', where: 'finance.replacements' })
    expect(told?.source?.standing).toBe('common practice, no source')
    // 8,000 W x 0.25 USD/W in year 13 and 8 kW x 10 USD/kW in each of 25 years, at 3 %.
    const costs = [0, ...Array.from({ length: 25 }, (_, i) => 80 + (i === 12 ? 2000 : 0))]
    const without = result.values.npv_usd
    const withThem = without - npv(0.03, costs)
    expect(told?.message).toContain('2000 USD in year 13')
    expect(told?.message).toContain('80 USD a year')
    expect(told?.message).toContain(`${withThem.toFixed(0)} USD instead of ${without.toFixed(0)} USD`)
  })

  it('only what is not stated is priced', () => {
    const upkeep = payback(input({ ...bare, maintenance_usd_per_year: 40 }))
    const told = upkeep.findings.find(({ id }) => id === 'payback.running-costs-missing')
    expect(told?.message).not.toContain('a year')
    // One inverter of 2,000 USD in year 13 is worth 1,361.90 USD today.
    expect(told?.message).toContain(`${(upkeep.values.npv_usd - 2000 / 1.03 ** 13).toFixed(0)} USD instead of`)
    const short = payback(input({ ...bare, years: 10, maintenance_usd_per_year: 40 }))
    expect(short.findings.map(({ id }) => id)).not.toContain('payback.running-costs-missing')
  })

  it('the fee of a loan is assumed to be none', () => {
    const loan = { principal_usd: 10_000, apr_pct: 6, term_years: 10 }
    expect(assumedOf(payback(input({ ...stated, loan }))).get('finance.loan.dealer_fee_usd')).toMatchObject({
      value: 0,
    })
    expect(
      assumedOf(payback(input({ ...stated, loan: { ...loan, dealer_fee_usd: 0 } }))).has('finance.loan.dealer_fee_usd'),
    ).toBe(false)
  })

  it('a replacement after the study is told, not dropped in silence', () => {
    const late = payback(input({ ...stated, years: 10, replacements: [{ name: 'inverter', year: 13, usd: 1500 }] }))
    const told = late.findings.find(({ id }) => id === 'payback.replacement-after-study')
    expect(told?.message).toBe('inverter in year 13 (1500 USD) is after the study of 10 years and is not counted')
  })
})

describe('what an incentive does not say', () => {
  const rebate: Incentive = { ...entered, kind: 'upfront', amount_usd: 2000 }
  const credit: Incentive = { ...entered, kind: 'tax_credit', percent: 30, refundable: true }

  it('is assumed and printed: basis of a credit, tax, year', () => {
    const assumed = assumedOf(payback(input(stated, { rebate, credit })))
    expect(assumed.get('incentives.rebate.reduces_cost_basis')).toMatchObject({ value: 'false' })
    // 30 % of 2,000.
    expect(assumed.get('incentives.rebate.reduces_cost_basis')?.why).toContain('600 USD')
    expect(assumed.get('incentives.rebate.taxable')).toMatchObject({ value: 'false' })
    expect(assumed.get('incentives.rebate.year_received')).toMatchObject({ value: 0 })
    expect(assumed.get('incentives.credit.year_received')).toMatchObject({ value: 1 })
    expect(assumed.has('incentives.credit.reduces_cost_basis')).toBe(false)
    expect(assumed.has('incentives.credit.taxable')).toBe(false)
  })

  it('of a credit: that it is not paid out above the tax', () => {
    const { refundable: _, ...open } = credit
    const assumed = assumedOf(payback(input(stated, { open: { ...open, tax_liability_usd_per_year: 4000 } })))
    expect(assumed.get('incentives.open.refundable')).toMatchObject({ value: 'false' })
  })

  it('is nothing where it cannot matter or is stated', () => {
    const whole: Incentive = { ...rebate, reduces_cost_basis: false, taxable: false, year_received: 0 }
    const paths = [...assumedOf(payback(input(stated, { whole, credit: { ...credit, year_received: 1 } }))).keys()]
    expect(paths.filter((path) => path.startsWith('incentives.'))).toEqual([])
    expect(assumedOf(payback(input(stated, { rebate }))).has('incentives.rebate.reduces_cost_basis')).toBe(false)
  })

  it('is printed beside the sizes too', () => {
    const { assumptions } = chooseSize({
      sheet,
      usageKwh: even(1),
      calendar: calendar2025,
      candidates: [{ modules: 4, productionKwh: bell(1), grossCostUsd: 6000, dcRatingW: 1600 }],
      stoppedBy: 'the roof',
      finance: stated,
      incentives: { rebate },
    })
    expect(assumptions.map((one) => one.path)).toContain('incentives.rebate.taxable')
  })

  it('payments that begin after the study are refused like amounts', () => {
    const late: Incentive = {
      ...entered,
      kind: 'per_kwh',
      usd_per_kwh: 0.02,
      years: 5,
      year_received: 30,
      taxable: false,
    }
    expect(() => payback(input(stated, { late }))).toThrow('year 30 is after the study of 25 years')
    const lateCredit: Incentive = { ...credit, year_received: 26 }
    expect(() => payback(input(stated, { lateCredit }))).toThrow('year 26 is after the study of 25 years')
  })

  it('incentives above the price are told', () => {
    const much = payback(input(stated, { rebate: { ...rebate, amount_usd: 21_000 } }))
    expect(much.findings.find(({ id }) => id === 'incentive.above-cost')?.message).toContain(
      '21000 USD of incentives are more than the price of 20000 USD',
    )
    expect(payback(input(stated, { rebate })).findings.map(({ id }) => id)).not.toContain('incentive.above-cost')
  })

  it('a key that its kind does not use is told', () => {
    const odd = payback(input(stated, { odd: { ...rebate, usd_per_w: 0.5 } }))
    expect(odd.findings.find(({ id }) => id === 'incentive.key-unused')).toMatchObject({
      where: 'incentives.odd.usd_per_w',
      severity: 'warning',
    })
    expect(payback(input(stated, { rebate, credit })).findings.map(({ id }) => id)).not.toContain(
      'incentive.key-unused',
    )
  })
})

describe('a rise of prices that sells', () => {
  const escalated = (percent: number) =>
    payback(input({ ...stated, electricity_escalation_pct: percent })).findings.find(
      ({ id }) => id === 'payback.escalation-high',
    )

  it('is told above 3 % a year over inflation, with what it comes to', () => {
    // 1.05^25 = 3.386.
    expect(escalated(5)?.message).toContain('3.4 times')
    expect(escalated(5)?.where).toBe('finance.electricity_escalation_pct')
    expect(escalated(3)).toBeUndefined()
  })
})

describe('rates that are none', () => {
  it.each<[string, Finance]>([
    ['finance.discount_rate_pct', { discount_rate_pct: -100 }],
    ['finance.discount_rate_pct', { discount_rate_pct: Number.NaN }],
    ['finance.inflation_pct', { inflation_pct: -100 }],
    ['finance.electricity_escalation_pct', { electricity_escalation_pct: Number.NaN }],
    ['finance.electricity_escalation_pct', { electricity_escalation_pct: Number.POSITIVE_INFINITY }],
    ['finance.degradation_pct_per_year', { degradation_pct_per_year: 100 }],
    ['finance.degradation_pct_per_year', { degradation_pct_per_year: Number.NaN }],
    ['finance.installed_cost_usd', { installed_cost_usd: Number.NaN }],
    ['finance.installed_cost_usd', { installed_cost_usd: -1 }],
  ])('%s is refused as %o', (where, change) => {
    try {
      payback(input({ ...stated, ...change }))
    } catch (error) {
      expect(error).toMatchObject({ name: 'StageError', where })
      return
    }
    throw new Error('accepted')
  })
})
