import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { CHECK_STAGES, runHouse } from '../../src/house/index.js'
import { run } from '../../src/cli/commands/payback.js'
import { makeContext } from '../../src/cli/context.js'
import { UsageError } from '../../src/cli/errors.js'
import { csvTable, renderJson, type Report } from '../../src/report/index.js'
import { renderText } from '../../src/cli/output/text.js'
import type { BomValues } from '../../src/materials/index.js'
import type { SavingsValues, PaybackValues } from '../../src/money/index.js'
import { loadProject } from '../../src/project/index.js'
import { StageError, Worksheet } from '../../src/worksheet/index.js'

const tool = 'gablewatt 9.9.9'
const LARK = new URL('../../examples/lark-hollow.yaml', import.meta.url).pathname
const HARBOR = new URL('../../examples/harbor-point.yaml', import.meta.url).pathname

interface Asked {
  readonly set?: string[]
  readonly use?: string[]
  readonly bill?: number
  readonly cost?: number
  readonly versus?: string[]
}

async function ask(path: string, asked: Asked = {}): Promise<Report> {
  const { set = [], use = [], versus = [], ...rest } = asked
  const context = makeContext([path], tool, { color: false, set, use })
  const outcome = await run(context, { set, versus, ...rest })
  if (!('report' in outcome)) throw new Error('a report was expected')
  return outcome.report
}

const valuesOf = (report: Report): PaybackValues => report.result.values as PaybackValues
const textOf = (report: Report, width: number): Promise<string> =>
  renderText(
    report,
    { tool, project: undefined, locate: () => undefined, showWork: false },
    { width, paint: (_, text) => text, lines: false },
  )
const toCents = (usd: number): number => Math.round((usd + Number.EPSILON * Math.sign(usd)) * 100)

let folder: string
let lark: Report
let harbor: Report
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'gablewatt-payback-'))
  lark = await ask(LARK)
  harbor = await ask(HARBOR)
})
afterAll(() => rmSync(folder, { recursive: true }))

describe('payback', () => {
  test('every year of the table adds up, and the sums run on', () => {
    for (const report of [lark, harbor]) {
      const table = csvTable(report)
      const column = (key: string): number => table?.columns.findIndex((one) => one.key === key) ?? -1
      let sum = 0
      for (const row of table?.rows ?? []) {
        const numbers = row.map(Number)
        const parts = numbers.slice(2, column('net_usd')).reduce((all, each) => all + each, 0)
        // Parts are printed to the cent.
        expect(Math.abs(parts - (numbers[column('net_usd')] ?? Number.NaN))).toBeLessThan(0.05)
        sum += numbers[column('net_usd')] ?? Number.NaN
        expect(Math.abs(sum - (numbers[column('cumulative_usd')] ?? Number.NaN))).toBeLessThan(0.15)
      }
      expect(table?.rows).toHaveLength(26)
    }
  })

  test('savings are the difference of the twelve bills to the cent', () => {
    for (const { bills } of [valuesOf(lark), valuesOf(harbor)]) {
      const saved = bills.without.bills.map(
        (bill, i) => toCents(bill.total_usd) - toCents(bills.with.bills[i]?.total_usd ?? 0),
      )
      expect(saved).toEqual(bills.monthly_savings_usd.map(toCents))
      expect(toCents(bills.annual_savings_usd)).toBe(saved.reduce((all, each) => all + each, 0))
    }
  })

  test('the output is that of the energy estimate', async () => {
    const { estimateYield } = await import('../../src/yield/index.js')
    for (const [path, report] of [
      [LARK, lark],
      [HARBOR, harbor],
    ] as const) {
      const { project, files } = loadProject({ path })
      const { annual, monthly } = estimateYield(project, files).values
      const values = valuesOf(report)
      expect(values.first_year_kwh).toBeCloseTo(annual.ac_kwh, 1)
      // A bill's month ends at clock midnight, an hour off in summer, when it is dark.
      for (const [i, bill] of values.bills.with.bills.entries())
        expect(bill.generation_kwh).toBeCloseTo(monthly[i]?.ac_kwh ?? 0, 1)
    }
  })

  test('takes --cost before the project and the project before the bill of materials', async () => {
    const without = join(folder, 'no-cost.yaml')
    writeFileSync(
      without,
      'format: gablewatt/2\ntitle: t\nsite: { latitude_deg: 38.75, longitude_deg: -90.37 }\nroof_planes: { s: { azimuth_deg: 180, tilt_deg: 25 } }\narrays: { s: { roof_plane: s, module: m, inverter: i, modules: 8, mounting: near_roof, standoff_in: 4 } }\nequipment:\n  modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35 } }\n  inverters: { i: { kind: module_level, ac_power_w: 350, weighted_efficiency_pct: 97 } }\nusage: { annual_kwh: 9000 }\ntariff: { name: R (invented), energy: { all_year: { usd_per_kwh: 0.15 } }, rounding: line, solar: { net_metering: { settle: annual, true_up_month: 3 } } }\n',
    )
    const { digest } = loadProject({ path: without })
    const bom = join(folder, 'bom.json')
    const bomText = (gross_usd: number | null): string => {
      const none = { materials_usd: null, freight_usd: null, rentals_usd: null, fees_usd: null, labour_usd: null }
      const totals = {
        ...none,
        margin_usd: null,
        tax_usd: null,
        gross_usd,
        incentives_usd: null,
        net_usd: null,
        usd_per_w: null,
      }
      const lists = { lines: [], cut_list: [], cut_summaries: [] }
      const values: BomValues = {
        supplier: null,
        totals,
        totals_at_least: totals,
        complete: false,
        rating_w: 3200,
        ...lists,
      }
      return renderJson(
        { title: 'bom', stage: 'bom', sections: [], result: new Worksheet().result(values) },
        { tool, project: { title: 't', digest }, locate: () => undefined, showWork: false },
      )
    }
    writeFileSync(bom, bomText(8800))
    const gross = async (asked: Asked): Promise<number> => valuesOf(await ask(without, asked)).gross_cost_usd
    expect(await gross({ use: [bom] })).toBe(8800)
    expect(await gross({ use: [bom], cost: 7700 })).toBe(7700)
    const both = await ask(without, { use: [bom], cost: 7700 })
    expect(both.result.findings.find(({ id }) => id === 'payback.bom-not-used')?.message).toContain('8800 USD')
    writeFileSync(bom, bomText(null))
    await expect(ask(without, { use: [bom] })).rejects.toThrow(/lacks prices/u)
    expect(await gross({ use: [bom], cost: 7700 })).toBe(7700)
    expect(await gross({ set: ['finance.installed_cost_usd=9900'], cost: 7700 })).toBe(7700)
    expect(await gross({ set: ['finance.installed_cost_usd=9900'] })).toBe(9900)
    const missing = ask(without)
    await expect(missing).rejects.toThrow(StageError)
    await expect(missing).rejects.toMatchObject({ where: 'finance.installed_cost_usd' })
    await expect(missing).rejects.toMatchObject({ fix: expect.stringContaining('--use bom.json') as unknown })
    // A bill needs no cost.
    expect((await ask(without, { bill: 1 })).stage).toBe('bill')
  })

  test('takes the spread of the energy estimate, and says so', () => {
    const { uncertainty } = valuesOf(lark)
    const assumed = lark.result.assumptions.find(({ path }) => path === 'finance.uncertainty.yield_sigma_pct')
    expect(assumed?.value).toBe(uncertainty.yield_sigma_pct)
    expect(assumed?.why).toContain('energy estimate')
  })

  test('says which days the bills are worked out with, and takes the other choice', async () => {
    const path = 'finance.output_days'
    expect(lark.result.assumptions.find((one) => one.path === path)?.value).toBe('dealt')
    // A weather file has days of its own.
    expect(harbor.result.assumptions.some((one) => one.path === path)).toBe(false)
    const billing =
      'tariff.solar={ net_billing: { netting: hour, export_usd_per_kwh: 0.03, credit: { offsets: all, settle: annual, true_up_month: 12, paid_out_pct: 0 } } }'
    const exported = async (days: string): Promise<number> =>
      valuesOf(await ask(LARK, { set: [billing, `finance.output_days=${days}`] })).bills.with.export_kwh
    expect(await exported('dealt')).toBeGreaterThan(await exported('mean'))
  })

  test('has no number that is none, and fits 80 and 140 columns', async () => {
    for (const report of [lark, harbor]) {
      const json = renderJson(report, { tool, project: undefined, locate: () => undefined, showWork: false })
      expect(json).not.toMatch(/NaN|Infinity|undefined/u)
      for (const width of [80, 140]) {
        const text = await textOf(report, width)
        expect(text).not.toMatch(/NaN|Infinity|undefined/u)
        expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(width)
      }
    }
  })

  test('carries the cautions of money', () => {
    expect(lark.cautions).toEqual(['estimate', 'money'])
  })
})

describe('payback with a loan, as a person reads it', () => {
  const WHOLE = 'finance.loan={ principal_usd: 21900, apr_pct: 7, term_years: 40 }'
  let loan: Report
  beforeAll(async () => {
    loan = await ask(LARK, { set: [WHOLE] })
  })

  test('no time of payback of a system on credit is zero years, in no format', async () => {
    const { simple_payback: simple, discounted_payback: discounted } = valuesOf(loan)
    for (const one of [simple, discounted]) for (const years of Object.values(one)) expect(years).not.toBe(0)
    const text = await textOf(loan, 140)
    expect(text).not.toMatch(/\b0\.0 years/u)
    expect(text).toMatch(/Simple payback +not within 25 years/u)
    const versus = await ask(LARK, { versus: [WHOLE] })
    expect((versus.result.values as { versus: { simple_payback_years: number | null }[] }).versus[0]).toMatchObject({
      simple_payback_years: null,
      discounted_payback_years: null,
    })
    const table = csvTable(versus)
    const column = table?.columns.findIndex(({ heading }) => heading === 'Payback') ?? -1
    expect(table?.rows[1]?.[column]).toBeNull()
  })

  test('the text says what payback means, and shows what is owed', async () => {
    const text = await textOf(loan, 400)
    expect(text).toContain(`Payback: ${valuesOf(loan).payback_means}.`)
    expect(text).toContain('what is still owed on the loan counts as not yet paid')
    expect(text).toContain('Still owed')
    expect(text).toContain('Internal rate of return on own money')
    expect(await textOf(lark, 400)).not.toContain('Still owed')
  })

  test('the debt at the end of the study is a payment of its last year, and the table adds up', () => {
    const rows = valuesOf(loan).cash_flow
    const last = rows.at(-1)
    expect(last?.loan_payoff_usd).toBeGreaterThan(5000)
    expect(last?.cumulative_less_owed_usd).toBe(last?.cumulative_usd)
    const table = csvTable(loan)
    const at = (key: string): number => table?.columns.findIndex((one) => one.key === key) ?? -1
    for (const row of table?.rows ?? []) {
      const parts = row.slice(2, at('net_usd')).reduce<number>((all, each) => all + Number(each), 0)
      expect(Math.abs(parts - Number(row[at('net_usd')]))).toBeLessThan(0.05)
      const settled = Number(row[at('cumulative_usd')]) - Number(row[at('loan_owed_usd')])
      expect(Math.abs(settled - Number(row[at('cumulative_less_owed_usd')]))).toBeLessThan(0.015)
    }
  })

  test('a payback that a later cost undoes is printed as the one for good, with the first one', async () => {
    const undone = await ask(LARK, { set: ['finance.replacements=[{ name: inverters, year: 17, usd: 4000 }]'] })
    const { lasting_years: lasting, years, dips_again_year: dips } = valuesOf(undone).simple_payback
    expect(dips).toBe(17)
    expect(await textOf(undone, 140)).toContain(
      `${(lasting ?? 0).toFixed(1)} years (first after ${(years ?? 0).toFixed(1)} years; undone in year 17)`,
    )
    const versus = await ask(LARK, { versus: ['finance.replacements=[{ name: inverters, year: 17, usd: 4000 }]'] })
    const [other] = (versus.result.values as { versus: { simple_payback_years: number | null }[] }).versus
    expect(other?.simple_payback_years).toBe(lasting)
  })

  test('a price that the incentives cover is said in words', async () => {
    const set = [
      'incentives.cooperative_rebate={ name: All (invented), kind: upfront, amount_usd: 21900, source: invented, checked: "2026-03-02" }',
    ]
    expect(await textOf(await ask(LARK, { set }), 140)).toMatch(
      /Simple payback +at purchase: nothing is left to pay back/u,
    )
  })
})

interface BillReport {
  readonly month: number
  readonly without: SavingsValues['without']['bills'][number]
  readonly with: SavingsValues['with']['bills'][number]
  readonly saved_usd: number
}

describe('payback --bill', () => {
  test('prints the same bill that the year holds, line by line', async () => {
    for (const [path, year] of [
      [LARK, lark],
      [HARBOR, harbor],
    ] as const) {
      const report = await ask(path, { bill: 7 })
      const bill = report.result.values as BillReport
      const { bills } = valuesOf(year)
      expect(bill.without).toEqual(bills.without.bills[6])
      expect(bill.with).toEqual(bills.with.bills[6])
      expect(bill.saved_usd).toBe(bills.monthly_savings_usd[6])
      for (const side of [bill.without, bill.with]) {
        expect(side.lines.reduce((all, line) => all + toCents(line.amount_usd), 0)).toBe(toCents(side.total_usd))
      }
      const table = csvTable(report)
      const saved = table?.rows.reduce((all, row) => all + Number(row.at(-1)), 0)
      expect(saved).toBeCloseTo(bill.saved_usd, 6)
    }
  })

  test('is a bill that a person can add up with pencil and paper', async () => {
    const set = [
      'usage.monthly_kwh=[0, 0, 0, 0, 0, 0, 1480, 0, 0, 0, 0, 0]',
      'tariff.riders={ power_cost: { usd_per_kwh: 0.0118 } }',
      'tariff.fixed={ customer: { usd_per_month: 13.5 } }',
      'tariff.taxes={ city: { percent: 2 } }',
      'tariff.energy.summer={ tiers: [{ up_to_kwh_per_month: 750, usd_per_kwh: 0.1185 }, { usd_per_kwh: 0.1672 }] }',
    ]
    const { without } = (await ask(LARK, { bill: 7, set })).result.values as BillReport
    // 750 x 0.1185 = 88.875; 730 x 0.1672 = 122.056; 1480 x 0.0118 = 17.464; 13.50; 2 % of 241.90 = 4.838.
    expect(without.lines.map((line) => line.amount_usd)).toEqual([88.88, 122.06, 17.46, 13.5, 4.84])
    expect(without.total_usd).toBe(246.74)
  })

  test('holds the proof of its month alone', async () => {
    const { result } = await ask(LARK, { bill: 7 })
    const ids = result.worksheet.map((step) => step.id).filter((id) => id.startsWith('bill.'))
    expect(ids).toContain('bill.with.07.total')
    expect(ids.every((id) => id.split('.')[2] === '07')).toBe(true)
  })

  test('does not go with --versus', async () => {
    await expect(ask(LARK, { bill: 7, versus: [HARBOR] })).rejects.toThrow(UsageError)
  })
})

interface Versus {
  readonly versus: readonly { readonly scenario: string; readonly npv_usd: number; readonly gross_cost_usd: number }[]
}

describe('payback --versus', () => {
  test('is what each scenario gives by itself', async () => {
    const variant = 'finance.discount_rate_pct=5; finance.years=20'
    const { versus } = (await ask(LARK, { versus: [HARBOR, variant] })).result.values as Versus
    const alone = valuesOf(await ask(LARK, { set: ['finance.discount_rate_pct=5', 'finance.years=20'] }))
    expect(versus[0]?.npv_usd).toBe(valuesOf(harbor).npv_usd)
    expect(versus[1]).toMatchObject({ scenario: variant, npv_usd: alone.npv_usd })
  })

  test('the price of the command line counts for variants, but not for other files or a stated price', async () => {
    const { versus } = (
      await ask(LARK, {
        cost: 12_345,
        versus: [HARBOR, 'finance.years=20', 'finance.installed_cost_usd=20000'],
      })
    ).result.values as Versus
    expect(versus.map((one) => one.gross_cost_usd)).toEqual([valuesOf(harbor).gross_cost_usd, 12_345, 20_000])
  })

  test('--set counts for this project and its variants', async () => {
    const set = ['finance.years=30']
    const { versus } = (await ask(LARK, { set, versus: ['finance.discount_rate_pct=3'] })).result.values as Versus
    expect(versus[0]?.npv_usd).toBe(valuesOf(await ask(LARK, { set })).npv_usd)
  })

  test('names the scenario whose stage fails, and its warnings', async () => {
    const broken = ask(LARK, { versus: ['usage={ annual_kwh: 9000, load_shape: nobody }'] })
    await expect(broken).rejects.toThrow(/--versus usage=.*usage\.load_shape: there is no load shape 'nobody'/u)
    const report = await ask(LARK, { versus: ['finance.installed_cost_usd=200000'] })
    const told = report.result.findings.find(({ id }) => id === 'payback.never')
    expect(told?.message).toContain('in finance.installed_cost_usd=200000: ')
    for (const width of [80, 140])
      expect(Math.max(...(await textOf(report, width)).split('\n').map((line) => line.length))).toBeLessThanOrEqual(
        width,
      )
  })
})

test('check-project runs it when tariff and use are there', async () => {
  const stage = CHECK_STAGES.find(({ name }) => name === 'payback')
  const loaded = loadProject({ path: LARK })
  expect(stage?.applies(loaded.project)).toBe(true)
  const { tariff: _, ...half } = loaded.project
  expect(stage?.applies(half)).toBe(false)
  const result = await stage?.run(runHouse(loaded), loaded.project)
  expect(result?.findings.map(({ id }) => id)).toContain('incentive.none-assumed')
  // Without a price the bills are still checked.
  const { installed_cost_usd: _cost, ...finance } = loaded.project.finance ?? {}
  const project = { ...loaded.project, finance }
  const unpriced = await stage?.run(runHouse({ ...loaded, project }), project)
  expect(unpriced?.findings.some(({ severity }) => severity === 'error')).toBe(false)
  expect(unpriced?.worksheet.some(({ id }) => id === 'savings.year-1')).toBe(true)
})
