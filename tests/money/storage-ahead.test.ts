import { describe, expect, test } from 'vitest'
import { paybackOfProject, sizesOfProject } from '../../src/money/index.js'
import { loadProject, type Project } from '../../src/project/index.js'
import { countFitted } from '../../src/roof/index.js'
import { runYield } from '../../src/yield/index.js'

// A battery in a house whose years differ, held against the same house in years that are alike: no figure of its own.
const loaded = loadProject({ path: new URL('../../examples/fleet/fresno-battery.yaml', import.meta.url).pathname })
const house = countFitted(loaded.project)
const run = runYield(house, loaded.files)
const LEVEL = { inflation_pct: 0, electricity_escalation_pct: 0, degradation_pct_per_year: 0 }

type Parts = Partial<Pick<Project, 'usage' | 'tariff' | 'storage' | 'equipment'>>
const changed = (finance: Project['finance'], parts: Parts = {}, years = 4): Project => ({
  ...house,
  ...parts,
  finance: { ...house.finance, years, uncertainty: { samples: 100 }, ...finance },
})
const pay = (project: Project) => paybackOfProject(project, loaded.files, { estimate: () => run }).values
const { tariff, usage, equipment } = house
if (tariff === undefined || usage === undefined || equipment === undefined) throw new Error('a house without bills')

describe('a battery in years that differ', () => {
  test('prices that go their own way at the same pace give what one pace gives', () => {
    const pace = { real_pct_per_year: 1.5 }
    const together = pay(changed({ electricity_escalation_pct: 1.5 }))
    const apart = pay(changed({ price_path: { energy: pace, fixed: pace, export: pace } }))
    expect(apart.years_ahead).toHaveLength(4)
    for (const [i, row] of apart.cash_flow.entries()) {
      // Twelve bills of each kind, each rounded to the cent in prices of its year.
      expect(row.bill_savings_usd).toBeCloseTo(together.cash_flow[i]?.bill_savings_usd ?? NaN, 0)
    }
    expect(apart.storage?.years.map(({ capacity_pct }) => capacity_pct)).toEqual([97, 94, 91, 88])
    expect(apart.storage?.years.map(({ discharged_kwh }) => discharged_kwh)).toEqual(
      together.storage?.years.map(({ discharged_kwh }) => discharged_kwh),
    )
    const fade = (values: typeof apart) => values.storage?.years.map(({ fade_usd: usd }) => usd) ?? []
    for (const [i, usd] of fade(apart).entries()) {
      expect(usd).toBeGreaterThan(0)
      // Fade is told in prices of the purchase there, and of its year here.
      expect(Math.abs(usd / 1.015 ** (i + 1) - (fade(together)[i] ?? NaN))).toBeLessThan(0.3)
    }
    expect(Math.abs((apart.storage?.without.npv_usd ?? NaN) - (together.storage?.without.npv_usd ?? NaN))).toBeLessThan(
      1,
    )
  })

  test('use that grows: a later year saves what the first year of such a house does', () => {
    const storage = { ...house.storage, unit: 'battery10', count: 1, fade: 'stated' } as NonNullable<Project['storage']>
    const units = Object.entries(equipment.storage_units ?? {}).map(
      ([id, unit]) => [id, { ...unit, fade: { calendar_pct_per_year: 0, cycle_pct_per_full_cycle: 0 } }] as const,
    )
    const without = { ...equipment, storage_units: Object.fromEntries(units) }
    const of = (stated: typeof usage) => pay(changed(LEVEL, { usage: stated, storage, equipment: without }))
    const grows = of({ ...usage, growth_pct_per_year: 5 })
    const third = of({ ...usage, annual_kwh: 9600 * 1.05 ** 2 })
    expect(grows.cash_flow[3]?.bill_savings_usd).toBeCloseTo(third.first_year_savings_usd, 0)
    expect(grows.cash_flow[1]?.bill_savings_usd).toBeLessThan((grows.cash_flow[3]?.bill_savings_usd ?? 0) - 5)
    const discharged = grows.storage?.years.map(({ discharged_kwh: kwh }) => kwh) ?? []
    expect(discharged[2]).toBeCloseTo(third.storage?.annual.discharged_kwh ?? NaN, 0)
    // A house that uses more by day leaves less for the battery.
    expect(discharged[0]).toBeGreaterThan(discharged[2] ?? Infinity)
  })

  test('choose-size --storage gives the size of the project what the payback gives', () => {
    const project = changed(LEVEL, { usage: { ...usage, growth_pct_per_year: 5 } }, 3)
    const sizes = sizesOfProject(project, loaded.files, { storageUnits: 1, estimate: () => run }).values
    const rows = sizes.with_storage?.rows.filter(({ modules }) => modules === 14) ?? []
    expect(rows[0]?.npv_usd).toBe(sizes.sizes.find(({ modules }) => modules === 14)?.npv_usd)
    const dearer = 27_000 - (4000 + 14 * 950 + 9500)
    expect((rows[1]?.npv_usd ?? 0) - pay(project).npv_usd).toBeCloseTo(dearer, 2)
  })

  test('periods that begin at a quarter of an hour lose no output', () => {
    const rule = { period: 'on_peak', days: ['weekdays' as const], from_hour: 16.25, to_hour: 21 }
    const quarter = changed(
      LEVEL,
      {
        tariff: { ...tariff, time_of_use: { periods: ['on_peak', 'off_peak'], otherwise: 'off_peak', rules: [rule] } },
      },
      1,
    )
    const byMonth = (project: Project) => pay(project).bills.with.bills.map(({ generation_kwh: kwh }) => kwh)
    const whole = byMonth(changed(LEVEL, {}, 1))
    for (const [i, kwh] of byMonth(quarter).entries()) expect(kwh).toBeCloseTo(whole[i] ?? NaN, 3)
    expect(whole.reduce((sum, kwh) => sum + kwh, 0)).toBeGreaterThan(5000)
  })
})
