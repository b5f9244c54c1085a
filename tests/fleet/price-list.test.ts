import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { parse } from 'yaml'
import { ensureBuilt, gablewattWarm, ROOT } from '../cli/binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-prices-'))
const fleet = join(ROOT, 'examples/fleet')
const put = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}
const template = put(
  'template.yaml',
  readFileSync(join(fleet, 'template.yaml'), 'utf8').replaceAll('equipment.yaml', join(fleet, 'equipment.yaml')),
)
const table = put('houses.csv', 'id,arrays.main.modules,electrical.panel.bus_a\nsmall,6,200\nlarge,14,225\n')
const run = (args: readonly string[]) => gablewattWarm(['run-fleet', '--jobs', '1', ...args], { cwd: folder })
const common = [template, '--table', table, '--allow-outside', '--stages', 'bom']
const listIn = (name: string) =>
  parse(readFileSync(join(folder, name, 'price-list.yaml'), 'utf8')) as { items: Record<string, { pack: string }> }

beforeAll(ensureBuilt, 90_000)
afterAll(() => rmSync(folder, { recursive: true }))

test('one list holds the items of all houses once, with what they need together, and nothing else is written', async () => {
  for (const [name, id] of [
    ['small', '6'],
    ['large', '14'],
  ] as const) {
    const alone = put(`${name}.csv`, `id,arrays.main.modules\n${name},${id}\n`)
    await run([
      template,
      '--table',
      alone,
      '--allow-outside',
      '--stages',
      'bom',
      '--out-dir',
      name,
      '--write',
      'price-list',
    ])
  }
  const both = await run([...common, '--out-dir', 'both', '--write', 'price-list', '--jsonl'])
  expect(both.exitCode).toBe(0)
  expect(both.stdout).not.toContain('"items"')
  expect(readdirSync(join(folder, 'both'))).toEqual(['price-list.yaml'])
  const items = (name: string): string[] => Object.keys(listIn(name).items).toSorted()
  expect(items('both')).toEqual([...new Set([...items('small'), ...items('large')])].toSorted())
  const modules = (name: string): number =>
    Number(
      /([\d.]+) each\n/u.exec(
        /m410:[^\n]*\n/u.exec(readFileSync(join(folder, name, 'price-list.yaml'), 'utf8'))?.[0] ?? '',
      )?.[1],
    )
  expect([modules('small'), modules('large'), modules('both')]).toEqual([6, 14, 20])
  expect(both.stderr).toMatch(/\d+ items of 2 houses, to be filled in once/u)
})

test('filled in once, all houses are priced with it', async () => {
  await run([...common, '--out-dir', 'blank', '--write', 'price-list', '--jsonl'])
  const text = readFileSync(join(folder, 'blank/price-list.yaml'), 'utf8')
  put('filled.yaml', text.replaceAll(' }  # usd: ?', ', usd: 2 }  #'))
  const priced = await run([...common, '--set', 'materials.price_list=filled.yaml', '--jsonl'])
  const lines = priced.stdout
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as { stages: { bom: Record<string, unknown> }; findings: { id: string }[] })
  expect(lines).toHaveLength(2)
  for (const { stages, findings } of lines) {
    expect(stages.bom['totals.gross_usd']).toBeGreaterThan(0)
    expect(findings.filter(({ id }) => id.startsWith('materials.') && /price/u.test(id))).toEqual([])
  }
})

test('an existing list is not replaced, a shard makes none, and a killed run goes on with it', async () => {
  await run([...common, '--out-dir', 'twice', '--write', 'price-list', '--jsonl'])
  const text = readFileSync(join(folder, 'twice/price-list.yaml'), 'utf8')
  const again = await run([...common, '--out-dir', 'twice', '--write', 'price-list', '--jsonl'])
  expect(again).toMatchObject({ exitCode: 3, stdout: '' })
  const shard = await run([...common, '--out-dir', 'part', '--write', 'price-list', '--shard', '1/2'])
  expect(shard).toMatchObject({ exitCode: 2, stdout: '' })
  expect(shard.stderr).toContain('one list for the whole fleet; leave --shard out')
  const bad = put('bad.csv', readFileSync(table, 'utf8').replace('large', 'bad,x,\nlarge'))
  const stopped = [
    template,
    '--table',
    bad,
    '--allow-outside',
    '--stages',
    'bom',
    '--out-dir',
    'on',
    '--write',
    'price-list',
  ]
  await run([...stopped, '--fail-fast', '--csv'])
  expect(existsSync(join(folder, 'on/price-list.yaml'))).toBe(false)
  const on = await run([...stopped, '--resume'])
  expect(on.stdout).toMatch(/Taken from the interrupted run +1/u)
  expect(readFileSync(join(folder, 'on/price-list.yaml'), 'utf8')).toBe(text)
})
