import { describe, expect, test } from 'vitest'
import { run } from '../../src/cli/commands/choose-size.js'
import { makeContext } from '../../src/cli/context.js'
import { csvTable, renderJson, type Report } from '../../src/report/index.js'
import { renderText } from '../../src/cli/output/text.js'
import { paybackOfProject, sizesOfProject, type ProjectSizeValues } from '../../src/money/index.js'
import { loadProject } from '../../src/project/index.js'
import { StageError } from '../../src/worksheet/index.js'
import { estimateYield } from '../../src/yield/index.js'

const tool = 'gablewatt 9.9.9'
const LARK = new URL('../../examples/lark-hollow.yaml', import.meta.url).pathname
const HARBOR = new URL('../../examples/harbor-point.yaml', import.meta.url).pathname

interface Asked {
  readonly set?: string[]
  readonly share?: number
  readonly costPerModule?: number
  readonly costFixed?: number
}

async function ask(path: string, { set = [], ...options }: Asked = {}): Promise<Report> {
  const outcome = await run(makeContext([path], tool, { color: false, set }), options)
  if (!('report' in outcome)) throw new Error('a report was expected')
  return outcome.report
}

const valuesOf = (report: Report): ProjectSizeValues => report.result.values as ProjectSizeValues
const ids = (report: Report): string[] => report.result.findings.map((finding) => finding.id)
const lark = await ask(LARK, { share: 70 })
const harbor = await ask(HARBOR)
/** A panel that takes anything, so that the roof decides. */
const BIG_PANEL = ['electrical.panel.bus_a=400', 'electrical.panel.main_a=200']

describe('choose-size', () => {
  test.each([
    ['module-level inverters', LARK, lark],
    ['one string inverter', HARBOR, harbor],
  ])('the size of the project is worth what payback says of it: %s', (_, path, report) => {
    const values = valuesOf(report)
    const { project, files } = loadProject({ path })
    const row = values.sizes.find(({ modules }) => modules === values.modules_in_project)
    const branches = row?.branches ?? 1
    const installedCostUsd =
      values.cost_fixed_usd +
      values.cost_usd_per_module * values.modules_in_project +
      (project.finance?.cost_usd_per_branch ?? 0) * (branches - 1)
    const whole = paybackOfProject(project, files, { installedCostUsd }).values
    expect(row).toMatchObject({
      annual_kwh: whole.first_year_kwh,
      first_year_savings_usd: whole.first_year_savings_usd,
      net_cost_usd: whole.net_cost_usd,
      payback_years: whole.simple_payback.lasting_years,
      npv_usd: whole.npv_usd,
    })
  })

  test.each([
    ['module-level inverters', lark],
    ['one string inverter', harbor],
  ])('more modules make more and never save less: %s', (_, report) => {
    const { sizes, modules_by_array: shares } = valuesOf(report)
    for (const [i, row] of sizes.entries()) {
      const before = sizes[i - 1]
      expect(row.modules).toBeGreaterThan(before?.modules ?? 0)
      expect(row.annual_kwh).toBeGreaterThan(before?.annual_kwh ?? 0)
      expect(row.first_year_savings_usd).toBeGreaterThanOrEqual(before?.first_year_savings_usd ?? 0)
      const share = shares[i]
      expect(share?.modules).toBe(row.modules)
      expect(Object.values(share?.arrays ?? {}).reduce((sum, each) => sum + each, 0)).toBe(row.modules)
    }
  })

  test('buys the best modules first', () => {
    const { project, files } = loadProject({ path: LARK })
    const modules = Object.values(estimateYield(project, files).values.arrays)
      .flatMap((array) => array.by_module.map((module) => module.ac_kwh))
      .toSorted((a, b) => b - a)
    const { sizes } = valuesOf(lark)
    for (const n of [1, 5, 14]) {
      const best = modules.slice(0, n).reduce((sum, each) => sum + each, 0)
      expect(sizes.find((row) => row.modules === n)?.annual_kwh).toBeCloseTo(best, 0)
    }
  })

  test('what the kWh of a module replace adds up to its kWh', () => {
    const table = csvTable(lark)
    const at = (key: string): number => table?.columns.findIndex((column) => column.key === key) ?? -1
    for (const row of table?.rows ?? []) {
      // Under monthly net metering every kWh lowers a tier or is left over; each part is printed to the kWh.
      const said = row[at('replaces')]
      if (typeof said !== 'string') throw new Error('words were expected')
      const parts = [...said.matchAll(/(?:^|, )(\d+) /gu)].map((match) => Number(match[1]))
      const sum = parts.reduce((all, each) => all + each, 0)
      expect(Math.abs(sum - Number(row[at('marginal_kwh')]))).toBeLessThanOrEqual(1 + parts.length / 2)
    }
  })

  test('a further branch of inverters is a step in the cost', () => {
    const { sizes } = valuesOf(lark)
    const perModule = valuesOf(lark).cost_usd_per_module
    const { project } = loadProject({ path: LARK })
    const rebatePerModule = 0.2 * 410
    for (const [i, row] of sizes.entries()) {
      const before = sizes[i - 1]
      if (before === undefined || row.modules > 18) continue
      const branches = (row.branches ?? 0) - (before.branches ?? 0)
      const step = perModule - rebatePerModule + branches * (project.finance?.cost_usd_per_branch ?? 0)
      expect(row.marginal.cost_usd).toBeCloseTo(step, 2)
    }
    expect(sizes.at(-1)?.branches).toBeGreaterThan(sizes[0]?.branches ?? 0)
  })

  test('stops at the panel, and at the roof when the panel takes more', async () => {
    const { limits, stopped_by: stop, sizes } = valuesOf(lark)
    expect(stop).toMatch(/^the connection to the panel \(705\.12/u)
    expect(limits[0]).toMatchObject({ limit: stop, modules: sizes.at(-1)?.modules, or_more: false })
    const roof = limits.find(({ limit }) => limit === 'the roof')
    expect(roof?.modules).toBeGreaterThan(sizes.at(-1)?.modules ?? 0)
    const big = valuesOf(await ask(LARK, { set: BIG_PANEL }))
    expect(big.stopped_by).toBe('the roof')
    expect(big.sizes.at(-1)?.modules).toBe(roof?.modules)
    // The modules that are added leave those of the project as they are.
    const same = (values: ProjectSizeValues) => values.sizes.find(({ modules }) => modules === 20)?.annual_kwh
    expect(same(big)).toBe(same(valuesOf(lark)))
    // A 100 A bus with a 100 A main takes (120 - 100) / 1.25 = 16 A: ten inverters of 1.53 A.
    const small = await ask(LARK, { set: ['electrical.panel.bus_a=100', 'electrical.panel.main_a=100'] })
    expect(valuesOf(small).sizes.at(-1)?.modules).toBe(10)
  })

  test('says so when the panel cannot be checked, and goes by the roof', async () => {
    const report = await ask(LARK, { set: ['electrical={}'] })
    expect(ids(report)).toContain('size.panel-not-checked')
    expect(valuesOf(report).stopped_by).toBe('the roof')
  })

  test('keeps string lengths within the voltages, and says which sizes are left out', () => {
    const { sizes, modules_by_array: shares, limits } = valuesOf(harbor)
    const lengths = harbor.result.worksheet.find(({ id }) => id === 'size.strings.south')?.result.value
    const [least = 0, most = 0] = String(lengths).split(' to ').map(Number)
    // 37.4 V at -0.27 %/K and 31.5 V at -0.34 %/K within the 600 V of a dwelling.
    expect(most).toBeLessThanOrEqual(Math.floor(600 / 37.4))
    for (const { arrays } of shares) {
      for (const count of Object.values(arrays)) {
        if (count > 0) expect(count).toBeGreaterThanOrEqual(least)
        expect(count).toBeLessThanOrEqual(most)
      }
    }
    const left = harbor.result.findings.find(({ id }) => id === 'size.left-out')
    expect(left?.message).toContain(`1 to ${least - 1}`)
    expect(sizes[0]?.modules).toBe(least)
    expect(limits.map(({ limit }) => limit)).toContain('the longest strings that voltages allow')
  })

  test('does not compare more sizes than a dwelling has room for', () => {
    const overrides = ['arrays.south.arrangement.blocks.lower.rows=60']
    const { project, files } = loadProject({ path: LARK, overrides })
    expect(() => sizesOfProject(project, files)).toThrow(
      /the roof holds up to 4\d\d modules; at most 250 sizes are compared/u,
    )
  })

  test('takes what is there when a plane has no outline', () => {
    const { project, files } = loadProject({ path: HARBOR })
    const { west } = project.roof_planes
    if (west === undefined) throw new Error('the example has a west plane')
    const { outline: _, ...bare } = west
    const result = sizesOfProject({ ...project, roof_planes: { ...project.roof_planes, west: bare } }, files)
    expect(result.findings.find(({ id }) => id === 'size.roof-unmeasured')?.where).toBe('arrays.west')
    expect(result.values.modules_by_array.every(({ arrays }) => (arrays['west'] ?? 0) <= 8)).toBe(true)
  })

  test('picks the smallest size with the wished share', () => {
    const { sizes, picks, wished_share_pct: wished } = valuesOf(lark)
    expect(wished).toBe(70)
    const first = sizes.find((row) => row.share_of_use_pct >= 70)
    expect(picks.covers_wished_share).toBe(first?.modules)
    expect(first?.modules).toBeGreaterThan(1)
  })

  test('a cheaper module never makes the best size smaller', async () => {
    const best = async (costPerModule: number): Promise<number> =>
      valuesOf(await ask(LARK, { costPerModule, set: BIG_PANEL })).picks.best_npv ?? 0
    const sizes = [await best(1100), await best(700), await best(300)]
    expect(sizes).toEqual(sizes.toSorted((a, b) => a - b))
    expect(sizes[0]).toBeLessThan(sizes[2] ?? 0)
  })

  test('asks for both parts of the price, and doubts prices that contradict the quote', async () => {
    const missing = ask(HARBOR, { set: ['finance={ years: 25 }'] })
    await expect(missing).rejects.toThrow(StageError)
    await expect(missing).rejects.toMatchObject({ where: 'finance.cost_usd_per_module' })
    const half = ask(HARBOR, { set: ['finance={ years: 25 }'], costPerModule: 600 })
    await expect(half).rejects.toMatchObject({ where: 'finance.cost_fixed_usd' })
    expect(ids(lark)).not.toContain('size.cost-differs')
    expect(ids(await ask(LARK, { costFixed: 15_000 }))).toContain('size.cost-differs')
  })

  test('has no number that is none, and fits 80 and 140 columns', async () => {
    for (const report of [lark, harbor]) {
      const around = { tool, project: undefined, locate: () => undefined, showWork: false }
      expect(renderJson(report, around)).not.toMatch(/NaN|Infinity|undefined/u)
      for (const width of [80, 140]) {
        const text = await renderText(report, around, { width, paint: (_, part) => part, lines: false })
        expect(text).not.toMatch(/NaN|Infinity|undefined/u)
        expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(width)
      }
    }
    expect(lark.cautions).toEqual(['estimate', 'money'])
  })
})

test('the payback of a size counts the loan, and its meaning is printed', async () => {
  const report = await ask(LARK, { set: ['finance.loan={ principal_usd: 21900, apr_pct: 7, term_years: 25 }'] })
  const { sizes, payback_means: meaning } = valuesOf(report)
  const cash = new Map(valuesOf(lark).sizes.map((row) => [row.modules, row.payback_years]))
  for (const row of sizes) expect(row.payback_years ?? Infinity).toBeGreaterThan(cash.get(row.modules) ?? 0)
  expect(ids(report)).toContain('size.loan-capped')
  expect(meaning).toContain('still owed on the loan')
  const text = await renderText(
    report,
    { tool, project: undefined, locate: () => undefined, showWork: false },
    { width: 400, paint: (_, words) => words, lines: false },
  )
  expect(text).toContain(`Payback: ${meaning}.`)
})

test('a further branch without a price is assumed to be free, and that is printed', () => {
  const { project, files } = loadProject({ path: LARK })
  const { cost_usd_per_branch: _, ...finance } = project.finance ?? {}
  const path = 'finance.cost_usd_per_branch'
  const assumed = (all: readonly { path: string }[]): boolean => all.some((one) => one.path === path)
  expect(assumed(sizesOfProject({ ...project, finance }, files).assumptions)).toBe(true)
  expect(assumed(lark.result.assumptions)).toBe(false)
})
