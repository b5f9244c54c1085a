import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { FleetCollection } from '../../src/fleet/collect.js'
import { chosenColumns, fleetTable, usualColumns } from '../../src/fleet/fleet-columns.js'
import type { FleetPlan } from '../../src/fleet/plan.js'
import { workOut } from '../../src/fleet/work-out.js'
import { renderCsv } from '../../src/report/index.js'

// A label only: no figure changes. No source beside the schema's own words on finance.currency.
const EXAMPLES = new URL('../../examples/', import.meta.url).pathname
const folder = mkdtempSync(join(tmpdir(), 'gablewatt-currency-'))
afterAll(() => rmSync(folder, { recursive: true }))

const plan: FleetPlan = {
  stages: ['bom', 'payback'],
  write: ['bom'],
  outputFolder: folder,
  force: true,
  allowOutside: true,
  showStack: false,
  tool: 'gablewatt 9.9.9',
}
const outcome = (index: number, currency?: string) =>
  workOut(
    {
      index,
      name: `house-${index}`,
      path: `${EXAMPLES}fleet/springfield-whole-job.yaml`,
      overrides: [
        'materials.price_list=../prices.yaml',
        ...(currency === undefined ? [] : [`finance.currency=${currency}`]),
      ],
    },
    plan,
  )
const tableOf = async (currencies: readonly (string | undefined)[], names?: readonly string[]) => {
  const collection = new FleetCollection({ junit: false, baseline: undefined, figures: new Set(['payback.npv_usd']) })
  for (const [i, currency] of currencies.entries()) collection.add(await outcome(i, currency))
  const { rows } = collection
  const columns = names === undefined ? usualColumns(rows, [], true) : chosenColumns(names, [], undefined)
  return renderCsv(fleetTable(rows, columns)).split('\r\n')
}

describe('a fleet in another currency', async () => {
  const [plain, same, mixed] = [
    await tableOf([undefined, 'USD']),
    await tableOf(['EUR', 'EUR']),
    await tableOf(['EUR', undefined]),
  ]

  test('in US dollars has no column of labels', () => {
    expect(plain[0]).toContain('_usd,')
    expect(plain[0]).not.toContain('currency')
  })

  test('has the label in its names where all houses share it, and beside each house', () => {
    expect(same[0]).toBe(plain[0]!.replace('status,', 'status,currency,').replaceAll('_usd', '_eur'))
    expect(same[1]).toBe(plain[1]!.replace('ok,', 'ok,EUR,'))
  })

  test('names no currency in its headings where houses differ', () => {
    expect(mixed[0]).toBe(plain[0]!.replace('status,', 'status,currency,').replaceAll('_usd', '_money'))
    expect(mixed[1]).toContain(',ok,EUR,')
    expect(mixed[2]).toContain(',ok,USD,')
  })

  test('keeps the names of figures that a person chose', async () => {
    const chosen = await tableOf(['EUR'], ['project', 'currency', 'payback.npv_usd'])
    expect(chosen[0]).toBe('project,currency,payback.npv_usd')
    expect(chosen[1]).toMatch(/^house-0,EUR,\d/u)
  })

  test('has the label in the names of each bill of materials', async () => {
    const usd = await outcome(7)
    const eur = await outcome(8, 'EUR')
    const head = (name: string): string => readFileSync(join(folder, name, 'bom.csv'), 'utf8').split('\r\n')[0]!
    expect(usd.files).toEqual(['house-7/bom.csv'])
    expect(eur.files).toEqual(['house-8/bom.csv'])
    expect(head('house-7')).toContain('_usd')
    expect(head('house-8')).toBe(head('house-7').replaceAll('_usd', '_eur'))
    expect(eur.stages['payback']?.['currency']).toBe('EUR')
    expect(usd.stages['payback']).not.toHaveProperty('currency')
  })
})
