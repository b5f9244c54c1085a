import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { CheckedBillsValues, ImportedRateValues } from '../../src/money/index.js'
import { loadProject } from '../../src/project/index.js'
import { ensureBuilt, ROOT, gablewattWarm } from './binary.js'

// Samples of records and bills are invented.

const HOUSE = join(ROOT, 'examples/lark-hollow.yaml')
const BILLS = join(ROOT, 'examples/lark-hollow-bills.csv')
const sample = (name: string): string => join(ROOT, `tests/money/rates/samples/${name}.json`)
const folder = mkdtempSync(join(tmpdir(), 'rates-'))
const inFolder = (name: string): string => join(folder, name)

beforeAll(ensureBuilt)
afterAll(() => rmSync(folder, { recursive: true }))

const ratesOf = (json: string) => (JSON.parse(json) as { values: ImportedRateValues }).values
const billsOf = (json: string) => (JSON.parse(json) as { values: CheckedBillsValues }).values

describe('import-rate', () => {
  test.each(['daily-tiers', 'time-of-use-net-billing', 'demand-to-refuse'])(
    'the block of %s stands in a project that passes',
    async (name) => {
      const { stdout, exitCode } = await gablewattWarm(['import-rate', sample(name), '--anyway', '--on', '2026-05-01'])
      expect(exitCode).toBe(0)
      const house = readFileSync(join(ROOT, 'examples/fleet/indianapolis-tiers.yaml'), 'utf8')
      const text = house.replace(/^tariff:\n(?: .*\n)+/mu, stdout)
      expect(text).toContain('public utility rate database')
      const { project } = loadProject({ path: '-', text, baseFolder: join(ROOT, 'examples/fleet') })
      expect(project.tariff?.name).toContain('(invented)')
    },
  )

  test('--out writes the block; what is refused leaves no file', async () => {
    const [good, bad] = [inFolder('good.yaml'), inFolder('bad.yaml')]
    const written = await gablewattWarm(['import-rate', sample('daily-tiers'), '--on', '2026-05-01', '--out', good])
    expect(written).toMatchObject({ exitCode: 0, stdout: '' })
    expect(readFileSync(good, 'utf8')).toContain('usd_per_day: 0.32')
    const refused = await gablewattWarm(['import-rate', sample('demand-to-refuse'), '--out', bad])
    expect(refused.exitCode).toBe(1)
    for (const reason of ['demandratchetpercentage', 'coincidentratestructure', 'dgrules', 'approved'])
      expect(refused.stderr).toContain(reason)
    expect(existsSync(bad)).toBe(false)
  })

  test('as JSON, with the reasons as findings and no tariff', async () => {
    const { stdout, exitCode } = await gablewattWarm(['import-rate', sample('demand-to-refuse'), '--json'])
    expect(exitCode).toBe(1)
    expect(ratesOf(stdout)).toMatchObject({
      label: 'aaaaaaaaaaaaaaaaaaaaaaa3',
      tariff: null,
      yaml: null,
    })
  })

  test('several records are listed, and a label is asked for', async () => {
    const records = ['daily-tiers', 'time-of-use-net-billing'].map(
      (name) => (JSON.parse(readFileSync(sample(name), 'utf8')) as { items: unknown[] }).items[0],
    )
    const file = inFolder('two.json')
    writeFileSync(file, JSON.stringify(records))
    const listed = await gablewattWarm(['import-rate', file])
    expect(listed.exitCode).toBe(1)
    expect(listed.stdout).toContain('TOU-2 Solar')
    expect(listed.stdout).toContain('--label')
    const csv = await gablewattWarm(['import-rate', file, '--csv', '-q'])
    expect(csv.stdout.split('\r\n')[0]).toBe('label,utility,name,sector,from,to,approved')
    const one = await gablewattWarm(['import-rate', file, '--label', 'aaaaaaaaaaaaaaaaaaaaaaa1', '-q'])
    expect(one).toMatchObject({ exitCode: 0, stderr: '' })
    expect((await gablewattWarm(['import-rate', file, '--label', 'x'])).exitCode).toBe(2)
  })

  test.each([
    ['damaged', '{"items": [', 'damaged.json:1:12  this is no JSON'],
    ['wrong', '{"startdate": "x"}', 'wrong.json:1:15  startdate  found "x"; this is a number'],
  ])('a %s file is told with its place', async (name, text, message) => {
    writeFileSync(inFolder(`${name}.json`), text)
    const { stderr, exitCode } = await gablewattWarm(['import-rate', inFolder(`${name}.json`)])
    expect(exitCode).toBe(2)
    expect(stderr).toContain(message)
  })
})

describe('check-bill', () => {
  test('right bills: exit code 0, differences of 0', async () => {
    const { stdout, exitCode } = await gablewattWarm(['check-bill', HOUSE, BILLS, '--json'])
    expect(exitCode).toBe(0)
    const { bills, differing } = billsOf(stdout)
    expect(differing).toBe(0)
    expect(bills).toHaveLength(12)
    expect(bills[0]).toMatchObject({
      from: '2025-01-01',
      to: '2025-01-31',
      computed_usd: 133.89,
      stated_usd: 133.89,
      difference_usd: 0,
      suspect: null,
    })
  })

  test('a wrong key: exit code 1, and the key', async () => {
    const set = 'tariff.fixed.customer.usd_per_month=15.3'
    const shown = await gablewattWarm(['check-bill', HOUSE, BILLS, '--set', set])
    expect(shown.exitCode).toBe(1)
    expect(shown.stdout).toContain('tariff.fixed.customer.usd_per_month of 13.5 in place of 15.3 explains every')
    const json = await gablewattWarm(['check-bill', HOUSE, BILLS, '--set', set, '--json'])
    expect(billsOf(json.stdout).bills.every(({ suspect }) => suspect === 'tariff.fixed.customer.usd_per_month')).toBe(
      true,
    )
  })

  test('CSV, and a damaged table', async () => {
    const csv = await gablewattWarm(['check-bill', HOUSE, BILLS, '--csv', '-q'])
    expect(csv.stdout.split('\r\n').slice(0, 2)).toEqual([
      'from,to,days,computed_usd,stated_usd,difference_usd,wrong_line',
      '2025-01-01,2025-01-31,31,133.89,133.89,0,',
    ])
    const file = inFolder('bills.csv')
    writeFileSync(file, 'from,to,kwh,amount\n2025-01-01,2025-01-31,x,5\n')
    const damaged = await gablewattWarm(['check-bill', HOUSE, file])
    expect(damaged.exitCode).toBe(2)
    expect(damaged.stderr).toContain("bills.csv:2:23  kwh  'x' is not a number")
    expect(damaged.stderr).toContain('nothing was computed')
  })
})
