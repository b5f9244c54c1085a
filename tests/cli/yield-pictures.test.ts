import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { gablewattWarm } from './binary.js'

const folder = mkdtempSync(join(tmpdir(), 'yield-pictures-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const at = (name: string): string => join(folder, name)
const ESTIMATE = ['estimate-yield', 'examples/lark-hollow.yaml', '--quiet']

describe('estimate-yield with pictures', () => {
  test('writes the horizon and the modules, and does not replace a file unasked', async () => {
    const args = [...ESTIMATE, '--shade-chart', at('sky.svg'), '--module', 'south.r1c1', '--by-module', at('map.svg')]
    expect((await gablewattWarm(args)).exitCode).toBe(0)
    expect(readFileSync(at('sky.svg'), 'utf8')).toContain('seen from module south.r1c1')
    const map = readFileSync(at('map.svg'), 'utf8')
    for (const text of ['Roof plane south', 'Roof plane west', 'chimney', '>r2c7<']) expect(map).toContain(text)
    expect(await gablewattWarm(args)).toMatchObject({ exitCode: 3 })
  })

  test('says what is missing or not there, and writes nothing', async () => {
    const before = readdirSync(folder)
    for (const [more, told] of [
      [['--shade-chart', at('x.svg')], 'add --module, or --array with one of south, west'],
      [['--shade-chart', at('x.svg'), '--array', 'north'], '--array north: no such array'],
      [['--shade-chart', at('x.svg'), '--module', 'south.r9c9'], '--module south.r9c9: no module with this place'],
      [['--shade-chart', at('x.svg'), '--module', 'south.r1c1', '--array', 'south'], 'cannot be used with'],
      [['--module', 'south.r1c1'], '--module goes with --shade-chart'],
      [['--array', 'south'], '--array goes with'],
    ] as const) {
      const { exitCode, stderr } = await gablewattWarm([...ESTIMATE, ...more])
      expect(exitCode).toBe(2)
      expect(stderr).toContain(told)
    }
    expect(readdirSync(folder)).toEqual(before)
  })
})
