import { describe, expect, test } from 'vitest'
import { readPriceList } from '../../src/materials/index.js'
import { ProjectError } from '../../src/project/index.js'

const HEAD = 'format: gablewatt-prices/1\nsupplier: Invented\nitems:\n'

function problemsOf(text: string): string[] {
  try {
    readPriceList('prices.yaml', text)
  } catch (error) {
    if (error instanceof ProjectError) return error.message.split('\n')
    throw error
  }
  return []
}

describe('a price list', () => {
  test('is read with all that an entry can say', () => {
    const list = readPriceList(
      'prices.yaml',
      `${HEAD}  wire.thwn-2.10.copper: { name: Wire, part: W-10, pack: spool, holds: 500, usd: 158, valid_until: '2026-12-31', taxable: false, also_sold_as: [{ pack: foot, usd_low: 0.3, usd_high: 0.5 }] }\n`,
    )
    expect(list.items['wire.thwn-2.10.copper']).toMatchObject({ part: 'W-10', holds: 500, usd: 158 })
  })

  const CASES: readonly (readonly [name: string, entry: string, problem: RegExp])[] = [
    [
      'misspelt key',
      'a: { pack: each, usdd: 3 }',
      /^prices\.yaml:4:20 {2}items\.a\.usdd {2}unknown key; did you mean usd\?$/,
    ],
    ['missing pack', 'a: { usd: 3 }', /^prices\.yaml:4:3 {2}items\.a\.pack {2}missing/],
    [
      'unknown pack',
      'a: { pack: crate, usd: 3 }',
      /^prices\.yaml:4:14 {2}items\.a\.pack {2}found text 'crate'; expected one of/,
    ],
    ['text for a number', "a: { pack: each, usd: '3' }", /^prices\.yaml:4:25 {2}items\.a\.usd {2}/],
    ['negative price', 'a: { pack: each, usd: -3 }', /^prices\.yaml:4:25 {2}items\.a\.usd {2}.*-3/],
    [
      'price and range',
      'a: { pack: each, usd: 3, usd_low: 2, usd_high: 4 }',
      /^prices\.yaml:4:25 {2}items\.a\.usd {2}a price and a range/,
    ],
    ['half a range', 'a: { pack: each, usd_low: 2 }', /^prices\.yaml:4:6 {2}items\.a {2}half a range/],
    [
      'range upside down',
      'a: { pack: each, usd_low: 4, usd_high: 2 }',
      /^prices\.yaml:4:29 {2}items\.a\.usd_low {2}usd_low 4 is above usd_high 2/,
    ],
    ['spool without length', 'a: { pack: spool, usd: 3 }', /^prices\.yaml:4:6 {2}items\.a {2}a spool without holds/],
    [
      'single piece that holds several',
      'a: { pack: each, holds: 10, usd: 3 }',
      /^prices\.yaml:4:27 {2}items\.a\.holds {2}sold by 'each'/,
    ],
    [
      'broken piece in a box',
      'a: { pack: box, holds: 2.5, usd: 3 }',
      /^prices\.yaml:4:26 {2}items\.a\.holds {2}a box holds whole pieces/,
    ],
    [
      'day that is none',
      "a: { pack: each, usd: 3, valid_until: '2026-02-30' }",
      /^prices\.yaml:4:41 {2}items\.a\.valid_until {2}'2026-02-30' is no day/,
    ],
    [
      'item with itself',
      'a: { pack: each, usd: 3, includes: { a: 1 } }',
      /^prices\.yaml:4:43 {2}items\.a\.includes\.a {2}an item cannot come with itself/,
    ],
    [
      'same item twice',
      'a: { pack: each, usd: 3 }\n  a: { pack: each, usd: 4 }',
      /^prices\.yaml:5:3 {2}items\.a {2}this key stands twice/,
    ],
    [
      'wrong other pack',
      'a: { pack: each, usd: 3, also_sold_as: [{ pack: box, usd: 9 }] }',
      /^prices\.yaml:4:43 {2}items\.a\.also_sold_as\.0 {2}a box without holds/,
    ],
  ]
  test.each(CASES)('%s', (_, entry, problem) => {
    const problems = problemsOf(`${HEAD}  ${entry}\n`)
    expect(problems).toHaveLength(1)
    expect(problems[0]).toMatch(problem)
  })

  test('tells all problems at once, in the order of the file', () => {
    const problems = problemsOf(`${HEAD}  a: { pack: crate }\n  b: { usd: 3 }\n`)
    expect(problems.map((problem) => problem.slice(0, 15))).toEqual(['prices.yaml:4:1', 'prices.yaml:5:3'])
  })

  test.each([
    ['other format', 'format: gablewatt/2\nsupplier: X\nitems: {}\n', /^prices\.yaml:1:9 {2}format {2}/],
    ['no list at all', '- 1\n', /^prices\.yaml:1:1/],
    ['not YAML', 'items: {\n', /^prices\.yaml:/],
    [
      'freight that is free of nothing',
      'format: gablewatt-prices/1\nsupplier: X\nfreight_free_from_usd: 10\nitems: {}\n',
      /^prices\.yaml:3:24 {2}freight_free_from_usd/,
    ],
  ])('%s', (_, text, problem) => {
    expect(problemsOf(text)[0]).toMatch(problem)
  })
})
