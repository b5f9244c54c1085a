import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { readPriceList, type PriceList } from '../../src/materials/index.js'
import { ProjectError } from '../../src/project/index.js'

// A price list as a table says what the YAML says; the sample list is invented.

const yaml = readFileSync(new URL('../../examples/prices.yaml', import.meta.url), 'utf8')

function problemsOf(text: string): string[] {
  try {
    readPriceList('prices.csv', text)
  } catch (error) {
    if (error instanceof ProjectError) return error.message.split('\n')
    throw error
  }
  return []
}

const COLUMNS = [
  'id',
  'name',
  'part',
  'pack',
  'holds',
  'usd',
  'usd_low',
  'usd_high',
  'valid_until',
  'taxable',
  'includes',
]

/** A list as a table, one row for each pack. */
function tableOf({ items, ...head }: PriceList): string {
  const cell = (value: unknown): string => {
    if (value === undefined) return ''
    if (typeof value === 'boolean') return value ? 'yes' : 'no'
    if (typeof value === 'object')
      return Object.entries(value as object)
        .map(([id, n]) => `${id}=${n}`)
        .join('; ')
    const text = typeof value === 'number' ? String(value) : (value as string)
    return text.includes(',') ? `"${text}"` : text
  }
  const rows = Object.entries(items).flatMap(([id, { also_sold_as: others = [], ...item }]) =>
    [item, ...others].map((pack) =>
      COLUMNS.map((name) => (name === 'id' ? id : cell(Object.entries(pack).find(([key]) => key === name)?.[1]))).join(
        ',',
      ),
    ),
  )
  const lines = Object.entries(head)
    .filter(([key]) => key !== 'format')
    .map(([key, value]) => `# ${key}: ${value}`)
  return [...lines, COLUMNS.join(','), ...rows, ''].join('\n')
}

describe('a price list as a table', () => {
  test('is the sample list when it says the same', () => {
    const list = readPriceList('prices.yaml', yaml)
    expect(Object.keys(list.items).length).toBeGreaterThan(40)
    expect(readPriceList('prices.csv', tableOf(list))).toEqual(list)
  })

  test('takes another delimiter, a unit price, thousands, and its supplier from its name', () => {
    const text = 'ID;Unit price;Pack;Holds\nmodule.m410;"$1,148.50";each;\n"wire.x";99;spool;500\n'
    expect(readPriceList('shop/north.CSV', text)).toEqual({
      format: 'gablewatt-prices/1',
      supplier: 'north',
      items: { 'module.m410': { pack: 'each', usd: 1148.5 }, 'wire.x': { pack: 'spool', holds: 500, usd: 99 } },
    })
  })

  test.each([
    ['', 'prices.csv:1:1  there are no column names'],
    ['id,usd\na,1', 'prices.csv:1:1  there is no column pack'],
    ['id,pack,prize\na,each,1', 'prices.csv:1:9  prize  no such column; known are id, name'],
    ['id,pack,usd,unit price\na,each,1,2', 'prices.csv:1:13  unit price  this column stands twice'],
    ['id,pack,usd\n,each,1', 'prices.csv:2:1  id  the row has no id'],
    ['id,pack,usd\na,,1', 'prices.csv:2:1  items.a.pack  the row has no pack'],
    [
      'id,pack,usd\na,crate,1',
      "prices.csv:2:3  items.a.pack  found 'crate'; allowed are each, stick, box, spool, foot",
    ],
    ['id,pack,usd\na,each,one', "prices.csv:2:8  items.a.usd  'one' is not a number"],
    ['id,pack,usd\na,each,-1', "prices.csv:2:8  items.a.usd  '-1' is not a number"],
    ['id,pack,holds,usd\na,spool,,1', 'prices.csv:2:1  items.a  a spool without holds'],
    ['id,pack,usd_low,usd_high\na,each,4,2', 'prices.csv:2:8  items.a.usd_low  usd_low 4 is above usd_high 2'],
    ['id,pack,usd,valid_until\na,each,1,2026-02-30', "prices.csv:2:10  items.a.valid_until  '2026-02-30' is no day"],
    ['id,pack,usd,includes\na,each,1,b', "prices.csv:2:10  items.a.includes  'b' is not id=number"],
    [
      'id,pack,usd,name\na,each,1,A\na,foot,1,B',
      'prices.csv:3:10  items.a.also_sold_as.0.name  stands in the first row of a',
    ],
    ['# freight: 3\nid,pack,usd\na,each,1', 'prices.csv:1:1  freight  no such value of a price list'],
    ['# freight_usd: x\nid,pack,usd\na,each,1', "prices.csv:1:1  freight_usd  'x' is not a number of USD"],
    ['id,pack,usd\na,each', 'prices.csv:2:3  the row has 2 cells, the header 3'],
  ])('%j', (text, problem) => {
    expect(problemsOf(text)[0]).toContain(problem)
  })

  test('an id that every object has is an id', () => {
    expect(Object.keys(readPriceList('p.csv', 'id,pack,usd\nconstructor,each,1\nconstructor,foot,2').items)).toEqual([
      'constructor',
    ])
  })
})
