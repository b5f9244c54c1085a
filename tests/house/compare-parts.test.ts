import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { compareParts, runHouse, type ComparePartsOptions, type HouseInput } from '../../src/house/index.js'
import { sized } from '../../src/house/parts/size-arrays.js'
import { readPriceList } from '../../src/materials/index.js'
import { loadProject } from '../../src/project/index.js'
import { countFitted } from '../../src/roof/index.js'
import { StageError } from '../../src/worksheet/index.js'

/*
 * No source outside the program tells what its combinations come to: each is held against the stages of the same house run one by one
 * (price-bom, payback), whose own tests have the published sources, and break-even prices against the definition.
 */
const EXAMPLES = new URL('../../examples/', import.meta.url).pathname
const loaded = loadProject({ path: `${EXAMPLES}fleet/springfield-whole-job.yaml` })
const m410 = loaded.project.equipment.modules?.['m410']
const micro = loaded.project.equipment.inverters?.['micro366']
if (m410 === undefined || micro === undefined) throw new Error('the example changed')

const input: HouseInput = {
  ...loaded,
  project: {
    ...loaded.project,
    equipment: {
      ...loaded.project.equipment,
      modules: {
        m410,
        m425: { ...m410, pmax_w: 425 },
        strong: { ...m410, pmax_w: 600 },
        weak: { ...m410, design_load_up_psf: 5 },
        unpriced: { ...m410, pmax_w: 400 },
      },
      inverters: { ...loaded.project.equipment.inverters, micro366: micro, micro380: { ...micro, ac_power_w: 380 } },
    },
  },
}
const text = `${readFileSync(`${EXAMPLES}prices.yaml`, 'utf8')}
  module.m425: { pack: each, usd: 190 }
  module.strong: { pack: each, usd: 200 }
  inverter.micro380: { pack: each, usd: 150 }
  breaker.2p.25a: { pack: each, usd: 20 }
`
const prices = { name: 'prices.yaml', text, list: readPriceList('prices.yaml', text) }
const compare = (change: Partial<ComparePartsOptions> = {}) =>
  compareParts(input, { modules: ['m410', 'm425'], inverters: [], sizes: [], by: 'npv', prices, ...change })

/** The same house by its own stages at a price. */
async function stagesOf(module: string, modules: number, usd?: number) {
  const { installed_cost_usd: _, ...finance } = input.project.finance ?? {}
  const main = input.project.arrays['main']
  if (main === undefined) throw new Error('the example changed')
  const project = countFitted({
    ...input.project,
    finance,
    materials: { ...input.project.materials, price_list: 'prices.yaml' },
    arrays: { main: { ...main, module, modules } },
  })
  const house = runHouse(
    { ...input, project, files: new Map([...(input.files ?? []), ['prices.yaml', text]]) },
    { wishes: usd === undefined ? { payTheBom: true } : { installedCostUsd: usd } },
  )
  return { bom: (await house.bom()).values, payback: (await house.payback()).values }
}

describe('combinations', async () => {
  const { values } = await compare({ inverters: ['micro366', 'micro380'], sizes: [8, 10] })

  test('are all of those named, each with the figures of its own stages', async () => {
    expect(values.combinations).toBe(8)
    expect(values.options).toHaveLength(8)
    const one = values.options.find((o) => o.module === 'm425' && o.inverter === 'micro366' && o.size === 10)
    const { bom, payback } = await stagesOf('m425', 10)
    expect(one).toMatchObject({
      modules: 10,
      power_w: 4250,
      storage: null,
      price_usd: bom.totals.gross_usd,
      first_year_kwh: payback.first_year_kwh,
      first_year_savings_usd: payback.first_year_savings_usd,
      payback_years: payback.simple_payback.lasting_years,
      npv_usd: payback.npv_usd,
    })
  })

  test('stand in the order of their net present value', () => {
    const npv = values.options.map((one) => one.npv_usd)
    expect(npv).toEqual(npv.toSorted((a, b) => b - a))
    expect(values.options.map(({ place }) => place)).toEqual([1, 2, 3, 4, 5, 6, 7, 8])
  })

  test.each([
    ['payback', (a, b) => (a.payback_years ?? Infinity) <= (b.payback_years ?? Infinity)],
    ['energy', (a, b) => a.first_year_kwh >= b.first_year_kwh],
    ['price', (a, b) => a.price_usd <= b.price_usd],
  ] satisfies [
    ComparePartsOptions['by'],
    (a: (typeof values.options)[number], b: (typeof values.options)[number]) => boolean,
  ][])('and by %s', async (by, inOrder) => {
    const { options } = (await compare({ sizes: [8, 10], by })).values
    expect(options).toHaveLength(4)
    for (const [i, one] of options.entries()) expect(i === 0 || inOrder(options[i - 1]!, one)).toBe(true)
  })
})

describe('what the next one would have to cost', async () => {
  const { values } = await compare({ sizes: [10] })

  test('is the highest price to the cent at which it is as good, by the payback at that price', async () => {
    const [first, second] = values.options
    const even = values.break_even[0]
    expect(even?.place).toBe(1)
    const usd = even?.next_price_usd ?? Number.NaN
    expect(usd).toBeLessThan(second!.price_usd)
    const at = async (price: number): Promise<number> => (await stagesOf(second!.module, 10, price)).payback.npv_usd
    expect(await at(usd)).toBeGreaterThanOrEqual(first!.npv_usd)
    expect(await at(usd + 0.02)).toBeLessThan(first!.npv_usd)
    expect(even?.change_pct).toBeCloseTo((100 * (usd - second!.price_usd)) / second!.price_usd, 2)
  })

  test('is told to be none where no price brings it there', async () => {
    const { break_even: even } = (await compare({ sizes: [10], by: 'energy' })).values
    expect(even[0]).toMatchObject({ next_price_usd: null, change_pct: null })
  })
})

describe('what does not hold', async () => {
  const { values, findings } = await compare({ modules: ['strong', 'weak', 'unpriced', 'm410'], sizes: [10, 60] })
  const reasonsOf = (module: string, size: number): string[] =>
    values.dropped
      .filter((one) => one.module === module && one.size === size)
      .flatMap(({ reasons }) => reasons.map(({ id, message }) => `${id}: ${message}`))

  test('is dropped with finding and words', () => {
    expect(values.options.map(({ module, size }) => [module, size])).toEqual([['m410', 10]])
    expect(reasonsOf('strong', 10).join()).toContain('max_dc_power_w')
    // What a stage fails is told before a price is looked for.
    expect(reasonsOf('weak', 10).join()).toContain('structure.module-up')
    expect(reasonsOf('weak', 10).join()).not.toContain('materials.')
    expect(reasonsOf('unpriced', 10).join()).toContain('materials.price-missing: no price for module.unpriced')
    expect(reasonsOf('m410', 60).join()).toContain('parts.no-room: the roof takes fewer than 60')
  })

  test('one module more than the roof takes has no room', () => {
    const { project } = input
    const order = Object.keys(project.arrays)
    const sizes = Array.from({ length: 80 }, (_, at) => at + 1)
    const full = Math.max(...sizes.filter((size) => sized(project, size, order) !== undefined))
    const moduleCount = Object.values(sized(project, full, order)!.arrays).reduce(
      (sum, { modules = 0 }) => sum + modules,
      0,
    )
    expect(moduleCount).toBe(full)
    expect(sized(project, full + 1, order)).toBeUndefined()
  })

  test('is no error while another holds, and one when none does', async () => {
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([])
    const none = await compare({ modules: ['unpriced'] })
    expect(none.findings.map(({ id }) => id)).toContain('parts.none-holds')
  })
})

describe('what cannot be compared', () => {
  const refusal = async (run: Promise<unknown>): Promise<StageError> => {
    try {
      await run
    } catch (error) {
      if (error instanceof StageError) return error
    }
    throw new Error('nothing was refused')
  }

  test('an id that is not there, with those that are', async () => {
    const error = await refusal(compare({ modules: ['constructor'] }))
    expect(error.message).toContain("no module 'constructor'; the project has m410, m425")
  })

  test('sizes of modules that were placed by hand', async () => {
    const placed = loadProject({ path: `${EXAMPLES}lark-hollow.yaml` })
    const error = await refusal(
      compareParts(placed, { modules: ['m410'], inverters: [], sizes: [8], by: 'npv', prices }),
    )
    expect(error.where).toBe('arrays.south')
  })

  test('a lease, and more combinations than anybody looks at', async () => {
    const lease = { usd_per_month: 80, rise_pct_per_year: 1, term_years: 25 }
    const leased = { ...input, project: { ...input.project, finance: { lease } } }
    const wishes = { modules: ['m410'], inverters: [], sizes: [], by: 'npv', prices } as const
    expect((await refusal(compareParts(leased, wishes))).where).toBe('finance.lease')
    const sizes = Array.from({ length: 600 }, (_, i) => i + 1)
    expect((await refusal(compare({ sizes }))).message).toContain('1200 combinations')
  })
})
