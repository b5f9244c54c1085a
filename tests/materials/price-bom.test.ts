import { Big } from 'big.js'
import * as fc from '../fast-check.js'
import { describe, expect, test } from 'vitest'
import {
  blankPriceList,
  choosePack,
  compareBills,
  priceBom,
  readPriceList,
  type PriceItem,
} from '../../src/materials/index.js'
import type { Incentives, Materials, Project } from '../../src/project/index.js'
import { billOf, house, inputOf, lineOf, listOf, priceAll } from './demo.js'

const plain = billOf(house(6)).values

/** Every item at 1 USD a pack, with what the test is about. */
const input = (materials: Materials, incentives?: Incentives) => {
  const project: Project = { ...house(6, 1, materials), ...(incentives === undefined ? {} : { incentives }) }
  return { ...inputOf(project), prices: priceAll(plain, () => 1) }
}
const goodsUsd = plain.lines.reduce((sum, line) => sum + line.quantity, 0)

describe('packs', () => {
  test('whole packs are bought, the cheapest kind of them', () => {
    const spoolOrFeet: PriceItem = { pack: 'foot', usd: 0.5, also_sold_as: [{ pack: 'spool', holds: 250, usd: 80 }] }
    expect(choosePack(159, 'ft', spoolOrFeet)).toMatchObject({ packs: 159, holds: 1 })
    // At 160 ft both cost 80 USD, and by the foot nothing is left over.
    expect(choosePack(160, 'ft', spoolOrFeet)).toMatchObject({ packs: 160, leftOver: 0 })
    expect(choosePack(161, 'ft', spoolOrFeet)).toMatchObject({ packs: 1, leftOver: 89 })
    expect(choosePack(251, 'ft', spoolOrFeet)?.packs).toBe(251)
    expect(choosePack(330, 'ft', spoolOrFeet)).toMatchObject({ packs: 2, leftOver: 170 })
  })

  test('a pack of another unit does not fit', () => {
    expect(choosePack(10, 'ft', { pack: 'each', usd: 1 })).toBeUndefined()
    expect(choosePack(10, 'each', { pack: 'spool', holds: 100, usd: 1 })).toBeUndefined()
    const { values, findings } = billOf(house(6), listOf('  cable-clip: { pack: foot, usd: 1 }'))
    expect(lineOf(values, 'cable-clip').cost_usd).toBeNull()
    expect(findings.some((finding) => finding.id === 'materials.pack-does-not-fit')).toBe(true)
  })

  test('always reach the quantity with less than a pack left over, at a cost that never falls with the quantity', () => {
    const pack = fc.record({ holds: fc.integer({ min: 1, max: 60 }), cents: fc.integer({ min: 1, max: 9000 }) })
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.array(pack, { minLength: 1, maxLength: 4 }),
        (quantity, packs) => {
          const [first, ...others] = packs.map(({ holds, cents }) => ({
            pack: 'box' as const,
            holds,
            usd: cents / 100,
          }))
          if (first === undefined) throw new Error('no pack')
          const item = { ...first, ...(others.length > 0 ? { also_sold_as: others } : {}) }
          const choice = choosePack(quantity, 'each', item)
          const next = choosePack(quantity + 1, 'each', item)
          if (choice === undefined || next === undefined) throw new Error('no choice')
          expect(Number.isInteger(choice.packs)).toBe(true)
          expect(choice.packs * choice.holds).toBeGreaterThanOrEqual(quantity)
          expect(choice.leftOver).toBeLessThan(choice.holds)
          expect(next.cost?.high?.toNumber()).toBeGreaterThanOrEqual(choice.cost?.high?.toNumber() ?? Infinity)
          const cheapest = Math.min(...packs.map(({ holds, cents }) => Math.ceil(quantity / holds) * cents))
          expect(choice.cost?.high?.times(100).toNumber()).toBe(cheapest)
        },
      ),
      { numRuns: 150 },
    )
  })

  test('what comes with an item is not bought again', () => {
    const count = lineOf(plain, 'mount.foot').quantity
    const { values } = billOf(
      house(6),
      listOf(
        `  mount.foot: { pack: box, holds: 4, usd: 40, includes: { flashing.foot: 1, sealant: 0.01 } }
  flashing.foot: { pack: each, usd: 5 }
  sealant: { pack: each, usd: 9 }`,
      ),
    )
    expect(lineOf(values, 'mount.foot')).toMatchObject({
      packs: Math.ceil(count / 4),
      left_over: (4 - (count % 4)) % 4,
    })
    expect(lineOf(values, 'flashing.foot')).toMatchObject({ quantity: count, packs: 0, cost_usd: 0 })
    expect(lineOf(values, 'flashing.foot').why).toContain('come with mount.foot')
    // A part of a tube is no tube.
    const tubes = lineOf(plain, 'sealant').quantity
    expect(lineOf(values, 'sealant')).toMatchObject({ packs: Math.ceil(tubes), cost_usd: 9 * Math.ceil(tubes) })
  })

  test('a general entry prices its kinds, and its own entry wins', () => {
    const { values } = billOf(
      house(6),
      listOf(`  wire.thwn-2.14.copper: { pack: foot, usd: 0.2 }
  wire.thwn-2.14.copper.white: { name: White wire, pack: foot, usd: 0.3 }`),
    )
    expect(lineOf(values, 'wire.thwn-2.14.copper.black')).toMatchObject({ unit_price_usd: 0.2, cost_usd: 11.8 })
    expect(lineOf(values, 'wire.thwn-2.14.copper.white')).toMatchObject({
      unit_price_usd: 0.3,
      cost_usd: 5.7,
      name: 'White wire',
    })
  })

  test('prices decide which stock lengths rails are cut from', () => {
    const rails = (short: number, long: number) =>
      billOf(
        house(6),
        listOf(
          `  rail.rail40.168in: { pack: stick, usd: ${short} }\n  rail.rail40.204in: { pack: stick, usd: ${long} }`,
        ),
      )
        .values.lines.filter((line) => line.item.startsWith('rail.'))
        .map((line) => line.item)
    expect(rails(40, 48)).toEqual(['rail.rail40.168in'])
    expect(rails(40, 20)).toEqual(['rail.rail40.204in'])
    // Four modules ask for rails of 182.9 in in one piece: no unplanned joint, but a price that is missing.
    const short = billOf(house(4), listOf('  rail.rail40.168in: { pack: stick, usd: 40 }'))
    expect(lineOf(short.values, 'rail.rail40.204in')).toMatchObject({ quantity: 2, cost_usd: null })
    expect(short.findings.some((finding) => finding.id === 'materials.rail-too-long')).toBe(false)
    // A length that the list does not have is not cut from.
    const only = billOf(house(6), listOf('  rail.rail40.204in: { pack: stick, usd: 90 }')).values
    expect(only.lines.filter((line) => line.item.startsWith('rail.')).map((line) => line.item)).toEqual([
      'rail.rail40.204in',
    ])
  })
})

test('a rail longer than any stock is counted with a joint and a warning', () => {
  const base = inputOf(house(4))
  if (base.mounts === undefined) throw new Error('no mounts')
  const rails = base.mounts.values.rails.map((rail) => ({ ...rail, pieces_in: [300], length_in: 300 }))
  const { values, findings } = priceBom({
    ...base,
    mounts: { ...base.mounts, values: { ...base.mounts.values, rails } },
  })
  expect(lineOf(values, 'splice.rail40').quantity).toBe(2)
  expect(values.cut_list.filter((stick) => stick.item.startsWith('rail.')).flatMap((stick) => stick.cuts)).toHaveLength(
    4,
  )
  expect(findings.find((finding) => finding.id === 'materials.rail-too-long')?.severity).toBe('warning')
})

describe('prices that are not there', () => {
  test('make a lower bound and a finding, never zero', () => {
    const { values, findings } = billOf(house(6), listOf('  module.m410: { pack: each, usd: 150 }'))
    expect(values.complete).toBe(false)
    expect(values.totals).toMatchObject({ materials_usd: null, gross_usd: null, net_usd: null, usd_per_w: null })
    expect(values.totals_at_least.gross_usd).toBe(900)
    expect(lineOf(values, 'inverter.micro')).toMatchObject({ cost_usd: null, unit_price_usd: null, packs: null })
    const finding = findings.find((each) => each.id === 'materials.price-missing')
    expect(finding?.message).toContain('inverter.micro')
    expect(finding?.message).not.toContain('module.m410')
  })

  test('an entry without a price still says how many packs', () => {
    const { values } = billOf(house(6), listOf('  cable-clip: { pack: box, holds: 10 }'))
    expect(lineOf(values, 'cable-clip')).toMatchObject({ packs: 2, left_over: 8, cost_usd: null })
  })

  test('a range of prices gives a range of totals, which take the high end', () => {
    const prices = priceAll(plain, () => 1)
    prices.items['module.m410'] = { pack: 'each', usd_low: 100, usd_high: 150 }
    const { values, findings } = priceBom({ ...inputOf(house(6, 1, { margin_pct: 10 })), prices })
    expect(lineOf(values, 'module.m410')).toMatchObject({ cost_usd: 900, cost_at_least_usd: 600 })
    const others = goodsUsd - 6
    expect(values.totals.gross_usd).toBeCloseTo((others + 900) * 1.1, 2)
    expect(values.totals_at_least.gross_usd).toBeCloseTo((others + 600) * 1.1, 2)
    expect(values.complete).toBe(true)
    expect(findings.some((finding) => finding.id === 'materials.price-is-a-range')).toBe(true)
  })

  test('without a list everything is open', () => {
    expect(plain.totals.gross_usd).toBeNull()
    expect(billOf(house(6)).findings.some((finding) => finding.id === 'materials.no-price-list')).toBe(true)
  })
})

describe('days', () => {
  const bill = (until: string) =>
    billOf(house(6), listOf('  module.m410: { pack: each, usd: 150 }', `valid_until: '${until}'\n`)).findings

  test('a price that is over is told, its last day still holds', () => {
    const over = bill('2026-03-01').find((finding) => finding.id === 'materials.price-expired')
    expect(over?.message).toContain('module.m410 held until 2026-03-01, the project is of 2026-03-02')
    expect(bill('2026-03-02').some((finding) => finding.id === 'materials.price-expired')).toBe(false)
  })

  test('without a date of the project a note says that nobody looked', () => {
    const { document: _, ...project } = house(6)
    const { findings } = billOf(project, listOf("  module.m410: { pack: each, usd: 150, valid_until: '2020-01-01' }"))
    expect(findings.some((finding) => finding.id === 'materials.prices-not-dated')).toBe(true)
  })
})

describe('totals', () => {
  test('freight, fees, rentals, labour, margin and tax, worked by hand', () => {
    const { values } = priceBom(
      input({
        freight_usd: 120.5,
        fees: { permit: { name: 'Permit', usd: 180 }, inspection: { name: 'Inspection', usd: 45.25 } },
        rentals: { lift: { name: 'Lift', usd: 300 } },
        labour: { hours: 32.5, usd_per_hour: 65.1 },
        margin_pct: 15,
        sales_tax_pct: 6.5,
        sales_tax_on: ['materials', 'freight'],
      }),
    )
    // 32.5 x 65.10 = 2115.75
    const before = goodsUsd + 120.5 + 225.25 + 300 + 2115.75
    const margin = Math.round(before * 15 + 1e-6) / 100
    const tax = Math.round((goodsUsd + 120.5) * 6.5 + 1e-6) / 100
    expect(values.totals).toMatchObject({
      materials_usd: goodsUsd,
      freight_usd: 120.5,
      fees_usd: 225.25,
      rentals_usd: 300,
      labour_usd: 2115.75,
      margin_usd: margin,
      tax_usd: tax,
    })
    expect(values.totals.gross_usd).toBeCloseTo(before + margin + tax, 6)
    expect(values.totals.usd_per_w).toBeCloseTo((before + margin + tax) / 2460, 4)
    expect(values.rating_w).toBe(2460)
  })

  test('an item that is free of tax is not taxed, and the part that is taxed is an assumption when not stated', () => {
    const free = input({ sales_tax_pct: 10 })
    free.prices.items['module.m410'] = { pack: 'each', usd: 100, taxable: false }
    const { values, assumptions } = priceBom(free)
    expect(values.totals.tax_usd).toBeCloseTo((goodsUsd - 6) * 0.1, 6)
    expect(assumptions.some((each) => each.path === 'materials.sales_tax_on')).toBe(true)
  })

  test('freight of the list is free from a value of goods', () => {
    const free = input({})
    const list = (from: number) => ({ ...free.prices, freight_usd: 80, freight_free_from_usd: from })
    expect(priceBom({ ...free, prices: list(goodsUsd) }).values.totals.freight_usd).toBe(0)
    expect(priceBom({ ...free, prices: list(goodsUsd + 0.01) }).values.totals.freight_usd).toBe(80)
  })

  test('incentives at purchase are subtracted with their caps; later ones are left to the payback', () => {
    const source = { source: 'Invented', checked: '2026-03-01' }
    const { values, findings } = priceBom(
      input(
        {},
        {
          town: { name: 'Town', kind: 'upfront', amount_usd: 50, ...source },
          watt: { name: 'Watt', kind: 'per_watt', usd_per_w: 0.2, cap_usd: 40, ...source },
          share: { name: 'Share', kind: 'share_of_cost', percent: 10, ...source },
          credit: { name: 'Credit', kind: 'tax_credit', percent: 30, ...source },
          next_year: { name: 'Next', kind: 'upfront', amount_usd: 70, year_received: 1, ...source },
        },
      ),
    )
    const share = Math.round(goodsUsd * 10 + 1e-6) / 100
    expect(values.totals.incentives_usd).toBeCloseTo(50 + 40 + share, 6)
    expect(values.totals.net_usd).toBeCloseTo(goodsUsd - 90 - share, 6)
    expect(findings.find((finding) => finding.id === 'materials.incentives-later')?.message).toContain(
      'credit, next_year',
    )
  })

  test('labour by halves is refused', () => {
    expect(() => priceBom(input({ labour: { hours: 3 } }))).toThrow(/by halves or twice/)
    expect(() => priceBom(input({ labour: { hours: 3, usd_per_hour: 4, usd: 5 } }))).toThrow(/by halves or twice/)
  })

  test('equal the sum of the lines to the cent, whatever the prices', () => {
    const base = inputOf(house(6))
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 999_999 }), {
          minLength: plain.lines.length,
          maxLength: plain.lines.length,
        }),
        fc.integer({ min: 0, max: 3000 }),
        fc.integer({ min: 0, max: 1500 }),
        (mills, marginHundredths, taxHundredths) => {
          const project = {
            ...base.project,
            materials: {
              margin_pct: marginHundredths / 100,
              sales_tax_pct: taxHundredths / 100,
              labour: { usd: 1234.56 },
            },
          }
          // Prices in tenths of a cent, as wire by the foot has them.
          const prices = priceAll(plain, (index) => (mills[index] ?? 0) / 1000)
          const { values } = priceBom({ ...base, project, prices })
          const sum = values.lines.reduce((total, line) => total.plus(line.cost_usd ?? Number.NaN), new Big(0))
          expect(values.totals.gross_usd).toBe(Number(sum))
          for (const line of values.lines.filter((each) => each.packs !== null)) {
            expect(Number.isInteger(line.packs)).toBe(true)
            expect(line.cost_usd).toBe(Number(new Big(line.unit_price_usd ?? 0).times(line.packs ?? 0).round(2, 1)))
          }
          const {
            materials_usd: goods,
            freight_usd: freight,
            rentals_usd: rentals,
            fees_usd: fees,
            labour_usd: labour,
            margin_usd: margin,
            tax_usd: tax,
          } = values.totals
          const parts = [goods, freight, rentals, fees, labour, margin, tax].reduce<Big>(
            (total, part) => total.plus(part ?? 0),
            new Big(0),
          )
          expect(Number(parts)).toBe(values.totals.gross_usd)
        },
      ),
      { numRuns: 30 },
    )
  })
})

describe('two suppliers', () => {
  test('stand side by side, with the best of both', () => {
    const first = priceAll(plain, () => 2)
    const second = { ...priceAll(plain, () => 3), supplier: 'Other' }
    second.items['module.m410'] = { pack: 'each', usd: 1 }
    const base = inputOf(house(6))
    const comparison = compareBills(
      priceBom({ ...base, prices: first }).values,
      priceBom({ ...base, prices: second }).values,
    )
    expect(comparison).toMatchObject({ first: 'Invented', second: 'Other' })
    expect(comparison.lines.find((line) => line.item === 'module.m410')).toMatchObject({
      cost_first_usd: 12,
      cost_second_usd: 6,
      difference_usd: -6,
      cheaper: 'second',
    })
    expect(comparison.lines.find((line) => line.item === 'inverter.micro')).toMatchObject({
      cheaper: 'first',
      difference_usd: 6,
    })
    expect(comparison.gross_first_usd).toBe(2 * goodsUsd)
    expect(comparison.gross_second_usd).toBe(3 * (goodsUsd - 6) + 6)
    expect(comparison.goods_at_the_cheaper_usd).toBe(2 * (goodsUsd - 6) + 6)
  })

  test('a price that is missing at one of them leaves no difference', () => {
    const first = priceAll(plain, () => 2)
    const second = priceAll(plain, () => 3)
    delete second.items['module.m410']
    const base = inputOf(house(6))
    const comparison = compareBills(
      priceBom({ ...base, prices: first }).values,
      priceBom({ ...base, prices: second }).values,
    )
    expect(comparison.lines.find((line) => line.item === 'module.m410')).toMatchObject({
      difference_usd: null,
      cheaper: null,
    })
    expect(comparison.gross_second_usd).toBeNull()
    expect(comparison.goods_at_the_cheaper_usd).toBe(2 * goodsUsd)
  })
})

test('the blank list is a valid list of exactly the goods', () => {
  const list = readPriceList('blank.yaml', blankPriceList(plain))
  expect(Object.keys(list.items)).toEqual(plain.lines.map((line) => line.item))
  const { values } = billOf(house(6), list)
  expect(values.complete).toBe(false)
  expect(values.lines.every((line) => line.packs !== null)).toBe(true)
})

test('the same input gives the same bytes', () => {
  expect(JSON.stringify(priceBom(input({})))).toBe(JSON.stringify(priceBom(input({}))))
})
