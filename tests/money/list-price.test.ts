import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { runHouse } from '../../src/house/index.js'
import { listPriceFrom } from '../../src/money/index.js'
import { loadProject } from '../../src/project/index.js'

const baseFolder = new URL('../../examples', import.meta.url).pathname
const text = readFileSync(`${baseFolder}/lark-hollow.yaml`, 'utf8')
const bare = text.replace(/^ {2}cost_fixed_usd:.*\n/mu, '').replace(/^ {2}cost_usd_per_module:.*\n/mu, '')
const sizesOf = async (yaml: string, size = {}) =>
  runHouse(loadProject({ path: '-', text: yaml, baseFolder }), { wishes: { size } }).size()

test('sizes take what nobody states from the price list of the project, and say so', async () => {
  expect(bare).not.toBe(text)
  const bom = await runHouse(loadProject({ path: '-', text: bare, baseFolder })).bom()
  const { usdPerModule, fixedUsd, modules } = listPriceFrom(bom.values)
  // What grows is the sum of these groups of lines; tax and margin are none in the sample.
  const groups = ['modules', 'inverters', 'trunk', 'racking', 'roof', 'grounding']
  const grows = bom.values.lines
    .filter(({ group }) => groups.includes(group))
    .reduce((all, line) => all + line.cost_usd!, 0)
  expect(bom.values.totals).toMatchObject({ tax_usd: 0, margin_usd: 0 })
  expect(usdPerModule).toBeCloseTo(grows / modules, 2)
  expect(fixedUsd + usdPerModule * modules).toBeCloseTo(bom.values.totals.gross_usd!, 2)
  const sizes = await sizesOf(bare)
  expect(sizes.values).toMatchObject({ cost_usd_per_module: usdPerModule, cost_fixed_usd: fixedUsd })
  expect(sizes.assumptions.map(({ path }) => path)).toEqual(
    expect.arrayContaining(['finance.cost_usd_per_module', 'finance.cost_fixed_usd']),
  )
}, 60_000)

test('prices that are stated stay', async () => {
  const stated = await sizesOf(text)
  expect(stated.values).toMatchObject({ cost_usd_per_module: 780, cost_fixed_usd: 5600 })
  expect(stated.assumptions.map(({ path }) => path)).not.toContain('finance.cost_fixed_usd')
  expect((await sizesOf(bare, { usdPerModule: 700, fixedUsd: 5000 })).values.cost_usd_per_module).toBe(700)
}, 60_000)

test('a list without a price is no price', async () => {
  const lacking = bare.replace(
    /^materials:.*$/mu,
    'materials: { price_list: prices.yaml, tools_owned: [], extra_items: { x: { quantity: 1, why: test } } }',
  )
  await expect(sizesOf(lacking)).rejects.toThrow('the price list does not give the whole bill')
}, 60_000)
