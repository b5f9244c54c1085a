import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readRecords } from '../../src/money/rates/read-records.js'
import { parseJson, TooMuchJson } from '../../src/values/index.js'
import { ensureBuilt, gablewatt, ROOT } from '../cli/binary.js'
import { DOORS, HOSTILE, writeCompanions } from './hostile-inputs.mjs'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-budgets-'))
const house = join(ROOT, 'examples/lark-hollow.yaml')
beforeAll(ensureBuilt)
afterAll(() => rmSync(folder, { recursive: true }))

const SIZE = 1_500_000
const fill = (text: string): string => text.repeat(Math.ceil(SIZE / text.length))

describe.skipIf(process.platform !== 'linux')('1.5 MB of YAML take neither a gigabyte nor five seconds', () => {
  // Measured without the bound of marks: 22 s and 2.5 GB, 14 s and 1.2 GB, 13 s and 1.1 GB, 6.5 s and 0.8 GB.
  test.each([
    ['brackets that do not match', `a: ${fill('[}')}`],
    ['keys that are missing', fill(':\n')],
    ['questions', fill('? \n')],
    ['a list of numbers', `a: [${fill('1,')}1]`],
    ['tags', `a: [${fill('!x 1,')}1]`],
  ])('%s', { timeout: 60_000 }, async (name, text) => {
    const path = join(folder, 'p.yaml')
    writeFileSync(path, text)
    const run = await gablewatt(['check-project', path], {
      env: { NODE_OPTIONS: `--require ${join(ROOT, 'tests/robustness/preload-tell-memory.cjs')}` },
    })
    expect(run.exitCode, name).toBe(2)
    expect(run.stderr).toContain('holds more than 200000 marks of YAML')
    expect(Number(/at most (\d+) kB/u.exec(run.stderr)?.[1])).toBeLessThan(600_000)
    expect(Number(/ ([\d.]+) s of CPU/u.exec(run.stderr)?.[1])).toBeLessThan(8)
  })
})

describe('JSON', () => {
  const deep = `${'['.repeat(300_000)}${']'.repeat(300_000)}`

  test('is read to 100 levels, brackets in texts not counted', () => {
    const nested = (levels: number): string => '['.repeat(levels) + ']'.repeat(levels)
    expect(parseJson(nested(100))).toEqual(JSON.parse(nested(100)))
    expect(() => parseJson(nested(101))).toThrow(TooMuchJson)
    const text = JSON.stringify({ a: '"[['.repeat(200), b: String.raw`\"[`, c: [[], [], {}] })
    expect(parseJson(text)).toEqual(JSON.parse(text))
    expect(parseJson(JSON.stringify(Array.from({ length: 500 }, () => [])))).toHaveLength(500)
    expect(() => parseJson('[1,2', 10)).toThrow(SyntaxError)
    expect(() => parseJson('[1,2,3]', 2)).toThrow('more than 2 brackets, commas and colons')
  })

  test.each([
    ['price-bom', house, '--use', 'FILE'],
    ['run-fleet', house, '--stages', 'yield', '--jobs', '1', '--baseline', 'FILE'],
    ['draw-permit', house, '--since', 'FILE', '--out', join(folder, 'never.pdf')],
    ['verify-file', 'FILE'],
    ['import-rate', 'FILE'],
  ])('that is nested deep is refused by %s', { timeout: 60_000 }, async (...args) => {
    const path = join(folder, 'deep.json')
    for (const text of [deep, `{"format":"gablewatt-result/1","data":${deep}}`]) {
      writeFileSync(path, text)
      const run = await gablewatt(args.map((arg) => (arg === 'FILE' ? path : arg)))
      expect([2, 3], run.stderr.slice(0, 500)).toContain(run.exitCode)
      expect(run.stderr).not.toMatch(/defect|RangeError|NaN|undefined/u)
    }
  })

  test('of rates: what is too much says so and what to do', () => {
    expect(() => readRecords('r.json', deep)).toThrow(
      'nested more than 100 levels deep; save the answer of the service',
    )
    expect(() => readRecords('r.json', `[${'{},'.repeat(1_000_001)}{}]`)).toThrow('more than 2000000 brackets')
  })
})

describe.skipIf(process.platform !== 'linux')(
  'the worst file of a kind at its bounds stays within 600 MB and 15 s of CPU',
  () => {
    const inputs = join(folder, 'inputs')
    beforeAll(() => {
      cpSync(join(ROOT, 'examples'), inputs, { recursive: true })
      writeCompanions(inputs)
    })

    // By night all of them; by day some of the worst that a reader without its bounds would take gigabytes or minutes for.
    const BY_DAY = new Set([
      'weatherTypical bad rows',
      'meterXml entities',
      'meterXml elements of names of their own',
      'production bad stamps',
      'production wide header',
      'production lines without a header',
      'merge one line',
      'logo groups with transforms',
    ])
    test.each(HOSTILE.filter(([kind, name]) => BY_DAY.has(`${kind} ${name}`) || process.env['NIGHTLY'] !== undefined))(
      '%s: %s',
      { timeout: 240_000 },
      async (kind, name, make, ending = '.dat') => {
        const path = join(inputs, `hostile${ending}`)
        make(path)
        const run = await gablewatt(
          DOORS[kind]!.map((arg) => arg.replaceAll('FILE', path)),
          { cwd: inputs, env: { NODE_OPTIONS: `--require ${join(ROOT, 'tests/robustness/preload-tell-memory.cjs')}` } },
        )
        rmSync(path)
        // What lies just within a bound may be of use.
        const codes = name.startsWith('most ') ? [0, 1, 2, 3] : [2, 3]
        expect(codes, `${name}: ${run.stderr.slice(0, 500)}`).toContain(run.exitCode)
        expect(run.stderr, 'a file that the door needs beside it').not.toContain('no such file')
        expect(run.stderr).not.toMatch(/ at .*\.c?js:|NaN|undefined|RangeError/u)
        expect(Number(/at most (\d+) kB/u.exec(run.stderr)?.[1])).toBeLessThan(600_000)
        expect(Number(/ ([\d.]+) s of CPU/u.exec(run.stderr)?.[1])).toBeLessThan(15)
      },
    )
  },
)
