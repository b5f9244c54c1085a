import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { BomValues } from '../../src/materials/index.js'
import { ensureBuilt, ROOT, gablewattWarm } from './binary.js'

const HOUSE = join(ROOT, 'examples/lark-hollow.yaml')
const WITH_PRICES = ['price-bom', HOUSE, '--set', 'materials.price_list=prices.yaml']
const folder = mkdtempSync(join(tmpdir(), 'price-bom-'))
const inFolder = (name: string): string => join(folder, name)

beforeAll(ensureBuilt)
afterAll(() => rmSync(folder, { recursive: true }))

const valuesOf = (json: string): BomValues => (JSON.parse(json) as { values: BomValues }).values

describe('price-bom', () => {
  test('prices the example house completely, with totals that are the sum of the lines', async () => {
    const { stdout, stderr, exitCode } = await gablewattWarm([...WITH_PRICES, '--json'])
    expect(stderr).toBe('')
    expect(exitCode).toBe(0)
    const { stage, values, worksheet } = JSON.parse(stdout) as {
      stage: string
      values: BomValues
      worksheet: unknown[]
    }
    expect(stage).toBe('bom')
    expect(values.complete).toBe(true)
    const cents = values.lines.reduce((sum, line) => sum + Math.round((line.cost_usd ?? Number.NaN) * 100), 0)
    expect(Math.round((values.totals.gross_usd ?? 0) * 100)).toBe(cents)
    expect(values.lines.every((line) => line.why !== '')).toBe(true)
    expect(values.cut_list.length).toBeGreaterThan(0)
    expect(worksheet.length).toBeGreaterThan(values.lines.length)
  })

  test('prints what to buy, how to cut and where quantities come from', async () => {
    const { stdout, exitCode } = await gablewattWarm(WITH_PRICES)
    expect(exitCode).toBe(0)
    for (const text of [
      'What to buy',
      'Cut list',
      'Where the quantities come from',
      'Sampletown Solar Supply (invented)',
      'no cheaper way exists',
    ])
      expect(stdout).toContain(text)
    expect(stdout).toContain('the prices of Sampletown Solar Supply (invented) are invented')
  })

  test('--csv is a shopping list of goods', async () => {
    const { stdout } = await gablewattWarm([...WITH_PRICES, '--set', 'materials.labour.usd=500', '--csv'])
    const [head, ...rows] = stdout.trimEnd().split('\r\n')
    expect(head).toBe('group,item,name,part,quantity,unit,packs,pack,unit_price_usd,cost_usd,why')
    expect(rows.find((row) => row.includes(',mount.'))).toMatch(
      /^roof,mount\.flashed_foot,.*,each,\d+,box of 8,116,\d+,/,
    )
    expect(stdout).not.toMatch(/^labour,/m)
  })

  test('--compare sets two suppliers side by side', async () => {
    const other = inFolder('other.yaml')
    const text = readFileSync(join(ROOT, 'examples/prices.yaml'), 'utf8')
    writeFileSync(
      other,
      text
        .replace('supplier: Sampletown Solar Supply (invented)', 'supplier: Other (invented)')
        .replace('usd: 131.5', 'usd: 120'),
    )
    const { stdout } = await gablewattWarm([...WITH_PRICES, '--compare', other, '--json'])
    const values = valuesOf(stdout) as BomValues & { comparison: { difference_usd: number; lines: { item: string }[] } }
    const inverters = values.lines.find((line) => line.item === 'inverter.micro366')?.quantity ?? 0
    expect(values.comparison.difference_usd).toBeCloseTo(-11.5 * inverters, 6)
    expect((await gablewattWarm([...WITH_PRICES, '--compare', other])).stdout).toContain('against Other (invented)')
  })

  test('--blank-list writes a list that price-bom can read back', async () => {
    const blank = inFolder('blank.yaml')
    expect((await gablewattWarm(['price-bom', HOUSE, '--blank-list', blank, '--json'])).exitCode).toBe(0)
    const { stdout, exitCode } = await gablewattWarm([...WITH_PRICES, '--compare', blank, '--json'])
    expect(exitCode).toBe(0)
    expect(valuesOf(stdout).complete).toBe(true)
    // An existing file is not overwritten.
    expect((await gablewattWarm(['price-bom', HOUSE, '--blank-list', blank])).exitCode).not.toBe(0)
  })

  test('takes the mounts and the wiring from earlier results', async () => {
    const [mounts, wire] = await Promise.all([
      gablewattWarm(['space-mounts', HOUSE, ...WITH_PRICES.slice(2), '--json']),
      gablewattWarm(['size-wire', HOUSE, ...WITH_PRICES.slice(2), '--json']),
    ])
    writeFileSync(inFolder('mounts.json'), mounts.stdout)
    writeFileSync(inFolder('wire.json'), wire.stdout)
    const used = await gablewattWarm([
      ...WITH_PRICES,
      '--use',
      inFolder('mounts.json'),
      '--use',
      inFolder('wire.json'),
      '--json',
    ])
    const computed = await gablewattWarm([...WITH_PRICES, '--json'])
    const { lines, totals } = valuesOf(used.stdout)
    expect(totals).toEqual(valuesOf(computed.stdout).totals)
    expect(lines.map((line) => [line.item, line.quantity, line.cost_usd])).toEqual(
      valuesOf(computed.stdout).lines.map((line) => [line.item, line.quantity, line.cost_usd]),
    )
  })

  test('names the place of a mistake in a price list, and a list that is not there', async () => {
    const wrong = inFolder('wrong.yaml')
    writeFileSync(wrong, 'format: gablewatt-prices/1\nsupplier: X\nitems:\n  module.m410: { pack: each, usd: -3 }\n')
    const bad = await gablewattWarm([...WITH_PRICES, '--compare', wrong])
    expect(bad.exitCode).toBe(2)
    expect(bad.stderr).toContain(`${wrong}:4:35  items.module.m410.usd`)
    const absent = await gablewattWarm([...WITH_PRICES, '--compare', inFolder('absent.yaml')])
    expect(absent.exitCode).toBe(3)
  })
})
