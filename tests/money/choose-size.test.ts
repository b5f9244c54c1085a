import { describe, expect, it } from 'vitest'
import { chooseSize, readTariff, type ChooseSizeInput } from '../../src/money/index.js'
import type { Tariff } from '../../src/project/index.js'
import { bell, calendar2025, even, total } from './hours.js'

const tariff: Tariff = {
  name: 'R-1 (invented)',
  energy: { all_year: { tiers: [{ up_to_kwh_per_month: 400, usd_per_kwh: 0.1 }, { usd_per_kwh: 0.3 }] } },
  rounding: 'line',
  solar: { net_metering: { settle: 'annual', true_up_month: 3 } },
}
const perModule = bell(0.3)
const kwhPerModule = total(perModule)

function input(change: Partial<ChooseSizeInput> = {}): ChooseSizeInput {
  return {
    sheet: readTariff(tariff),
    usageKwh: even(1),
    calendar: calendar2025,
    candidates: Array.from({ length: 16 }, (_, i) => ({
      modules: i + 1,
      productionKwh: perModule.map((kwh) => kwh * (i + 1)),
      grossCostUsd: 3000 + 900 * (i + 1),
      dcRatingW: 400 * (i + 1),
    })),
    stoppedBy: 'the roof',
    finance: {
      years: 25,
      discount_rate_pct: 3,
      inflation_pct: 2,
      electricity_escalation_pct: 0,
      degradation_pct_per_year: 0.5,
    },
    incentives: {},
    wishedSharePct: 60,
    ...change,
  }
}

describe('choose-size', () => {
  const { values } = chooseSize(input())

  it('each further module saves the dear tier first, then the cheap one, then nothing', () => {
    const rates = values.sizes.map((row) => row.marginal.usd_per_kwh ?? 0)
    // Two years of 12 bills rounded to the cent: 0.12 USD on the kWh of a module; rates are printed to four decimals.
    const tolerance = 0.12 / kwhPerModule + 0.5e-4
    expect(Math.abs((rates[0] ?? 0) - 0.3)).toBeLessThan(tolerance)
    for (const [i, rate] of rates.entries())
      expect(rate).toBeLessThanOrEqual((rates[i - 1] ?? Infinity) + 2 * tolerance)
    expect(rates.at(-1)).toBe(0)
  })

  it('says what the last module replaces', () => {
    const first = values.sizes[0]!.marginal.replaces
    expect(first.map((change) => change.id)).toEqual(['energy.all_year.tier_2'])
    expect(first[0]!.quantity).toBeCloseTo(-kwhPerModule, 3)
    const cheap = values.sizes.find((row) => (row.marginal.usd_per_kwh ?? 1) < 0.15)!
    expect(cheap.marginal.replaces[0]!.id).toBe('energy.all_year.tier_1')
  })

  it('marginal values add up to the whole', () => {
    const last = values.sizes.at(-1)!
    const sum = (pick: (row: (typeof values.sizes)[number]) => number): number =>
      values.sizes.reduce((all, row) => all + pick(row), 0)
    expect(sum((row) => row.marginal.savings_usd)).toBeCloseTo(last.first_year_savings_usd, 6)
    expect(sum((row) => row.marginal.npv_usd)).toBeCloseTo(last.npv_usd, 0)
  })

  it('picks by four yardsticks', () => {
    const { picks, sizes } = values
    const best = Math.max(...sizes.map((row) => row.npv_usd))
    expect(sizes.find((row) => row.modules === picks.best_npv)?.npv_usd).toBe(best)
    const quickest = Math.min(...sizes.map((row) => row.payback_years ?? Infinity))
    expect(sizes.find((row) => row.modules === picks.shortest_payback)?.payback_years).toBe(quickest)
    const covers = sizes.find((row) => row.share_of_use_pct >= 60)
    expect(picks.covers_wished_share).toBe(covers?.modules)
    // The dear tier holds 8760 - 12 x 400 = 3960 kWh a year.
    expect(Math.abs((picks.only_expensive_kwh ?? 0) - 3960 / kwhPerModule)).toBeLessThanOrEqual(1)
  })

  it('says which limit stops it, and that nothing pays', () => {
    const few = chooseSize(input({ candidates: input().candidates.slice(0, 3), stoppedBy: 'the busbar of the panel' }))
    expect(few.findings.find((finding) => finding.id === 'size.limit-reached')?.message).toContain(
      'the busbar of the panel',
    )
    const dear = input().candidates.map((one) => ({ ...one, grossCostUsd: one.grossCostUsd * 20 }))
    const none = chooseSize(input({ candidates: dear }))
    expect(none.values.picks.best_npv).toBeNull()
    expect(none.findings.map((finding) => finding.id)).toContain('size.none-pays')
    expect(() => chooseSize(input({ candidates: [] }))).toThrow('no module fits: the roof stops it')
  })
})
