import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { mergeParts } from '../../src/fleet/index.js'
import { BUILD, sealed } from '../../src/seal/index.js'
import { ensureBuilt, gablewattWarm, ROOT } from '../cli/binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-merge-'))
const template = join(ROOT, 'examples/fleet/template.yaml')
const table = join(folder, 'houses.csv')
const put = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text)
  return name
}
const run = (args: readonly string[]) => gablewattWarm(['run-fleet', ...args], { cwd: folder })
const shard = async (part: number, name: string, ...more: string[]): Promise<string> => {
  const common = [template, '--table', table, '--stages', 'yield', '--jobs', '1', '--jsonl', '--force']
  await run([...common, '--shard', `${part}/3`, '--out', name, ...more])
  return name
}
const read = (name: string): string => readFileSync(join(folder, name), 'utf8')
const linesOf = (name: string): string[] => read(name).split('\n').slice(0, -1)
type Line = Record<string, unknown> & { fleet: { id: string; row: number; rows: number } }
/** A line with a change and a new seal: what somebody could make on purpose. */
const remade = (line: string, change: (one: Line) => void): string => {
  const { seal: _, ...content } = JSON.parse(line) as Line
  change(content)
  return JSON.stringify(sealed(content))
}

let whole = ''
beforeAll(async () => {
  ensureBuilt()
  writeFileSync(table, 'id,site.latitude_deg\na,36\nb,37\nc,38\nd,39\ne,40\nf,41\ng,42\n')
  const all = await run([template, '--table', table, '--stages', 'yield', '--jobs', '1', '--jsonl'])
  whole = all.stdout
  for (const part of [1, 2, 3]) await shard(part, `part-${part}.jsonl`)
}, 120_000)
afterAll(() => rmSync(folder, { recursive: true }))

describe('--merge', () => {
  test('joins the parts in any order to what one run gives, byte for byte', async () => {
    const merged = await run(['--merge', 'part-3.jsonl', 'part-1.jsonl', 'part-2.jsonl'])
    expect(merged).toMatchObject({ exitCode: 0, stdout: whole })
    expect(merged.stderr).toBe('7 houses of 3 files; 7 pass, in 0 a check fails, 0 not usable\n')
    const lines = linesOf('part-1.jsonl').concat(linesOf('part-2.jsonl'), linesOf('part-3.jsonl')).toReversed()
    put('cat.jsonl', `${lines.join('\n')}\n`)
    expect(await run(['--merge', 'cat.jsonl', '--out', 'all.jsonl'])).toMatchObject({ exitCode: 0, stdout: '' })
    expect(read('all.jsonl')).toBe(whole)
    expect((await run(['--merge', 'part-*.jsonl', '--quiet'])).stdout).toBe(whole)
    expect((await run(['--merge', 'part-*.jsonl', '--out', 'all.jsonl'])).exitCode).toBe(3)
  })

  test('gives the exit code of the whole', async () => {
    const bad = put('bad.csv', 'id,site.latitude_deg,electrical.panel.bus_a\na,36,\nb,x,\nc,38,60\n')
    const common = [template, '--table', bad, '--stages', 'yield,wire', '--jobs', '1', '--jsonl', '--force']
    for (const part of [1, 2, 3]) await run([...common, '--shard', `${part}/3`, '--out', `bad-${part}.jsonl`])
    const merged = await run(['--merge', 'bad-1.jsonl', 'bad-2.jsonl', 'bad-3.jsonl'])
    expect(merged.exitCode).toBe(2)
    expect(merged.stdout.split('\n')).toHaveLength(4)
    expect(merged.stderr).toContain('3 houses of 3 files; 1 pass, in 1 a check fails, 1 not usable')
    expect(merged.stderr).toContain('1 of 3 projects could not be worked out')
    const failing = put('failing.csv', 'id,electrical.panel.bus_a\na,60\n')
    await run([template, '--table', failing, '--stages', 'wire', '--jsonl', '--out', 'failing.jsonl', '--jobs', '1'])
    expect((await run(['--merge', 'failing.jsonl'])).exitCode).toBe(1)
  })

  const [one, two, three] = ['part-1.jsonl', 'part-2.jsonl', 'part-3.jsonl'] as const

  test.each<[string, () => Promise<string[]> | string[], number, RegExp]>([
    ['a part is missing', () => [one, three], 2, /of 7 rows 3 to 4 are missing; has every part ended\?/u],
    [
      'a row is missing',
      () => [one, two, put('x.jsonl', `${linesOf(three).slice(1).join('\n')}\n`)],
      2,
      /of 7 rows 5 is missing/u,
    ],
    [
      'a row stands twice',
      () => [one, two, three, put('x.jsonl', `${linesOf(two)[1]}\n`)],
      2,
      /x\.jsonl:1: row 4 \(d\) stands at part-2\.jsonl:2 already/u,
    ],
    [
      'another table',
      async () => {
        const before = readFileSync(table, 'utf8')
        writeFileSync(table, before.replace('b,37', 'b,37.5'))
        const name = await shard(2, 'other.jsonl')
        writeFileSync(table, before)
        return [one, name, three]
      },
      2,
      /other\.jsonl:1: of another fleet than part-1\.jsonl:1/u,
    ],
    [
      'other --set',
      async () => [one, await shard(2, 'set.jsonl', '--set', 'losses.dirt_pct=3'), three],
      2,
      /set\.jsonl:1: of another fleet/u,
    ],
    [
      'another build',
      () => [
        one,
        put(
          'x.jsonl',
          `${linesOf(two)
            .map((line) => remade(line, (each) => (each['build'] = '0123456789abcdef')))
            .join('\n')}\n`,
        ),
        three,
      ],
      2,
      /x\.jsonl:1: made by gablewatt [\d.]+, build 0123456789abcdef; part-1\.jsonl:1 by .*make all parts with one/u,
    ],
    [
      'a figure that was changed',
      () => [one, put('x.jsonl', read(two).replace(/"annual\.ac_kwh":[\d.]+/u, '"annual.ac_kwh":99999')), three],
      2,
      /x\.jsonl:1: not as it was written/u,
    ],
    [
      'stages that are a number, with a new seal',
      () => [one, put('x.jsonl', `${remade(linesOf(two)[0] ?? '', (each) => (each['stages'] = 5))}\n`)],
      2,
      /x\.jsonl:1: a damaged line, at \/stages\//u,
    ],
    [
      'a key twice',
      () => [one, put('x.jsonl', read(two).replace('"status":', '"status":"failed","status":')), three],
      2,
      /x\.jsonl:1: not as it was written: JSON with a key twice in one map/u,
    ],
    [
      'other numbers of rows, with a new seal',
      () => [one, put('x.jsonl', `${remade(linesOf(two)[0] ?? '', (each) => (each.fleet.rows = 9))}\n`), three],
      2,
      /x\.jsonl:1: of another fleet/u,
    ],
    [
      'another version of the program, with a new seal',
      () => [
        one,
        put('x.jsonl', `${remade(linesOf(two)[0] ?? '', (each) => (each['tool'] = 'gablewatt 9.9.9'))}\n`),
        three,
      ],
      2,
      /x\.jsonl:1: made by gablewatt 9\.9\.9/u,
    ],
    [
      'a row beyond the last, with a new seal',
      () => [put('x.jsonl', `${remade(linesOf(two)[0] ?? '', (each) => (each.fleet.row = 8))}\n`)],
      2,
      /row 8 of a fleet of 7/u,
    ],
    [
      'a last line that is cut off',
      () => [one, put('x.jsonl', read(two).slice(0, -40)), three],
      2,
      /x\.jsonl:2: the last line is cut off/u,
    ],
    ['a file that is something else', () => [one, put('x.csv', 'id,title\n')], 2, /x\.csv:1: not JSON/u],
    ['an empty file', () => [put('empty.jsonl', '')], 2, /there is no line in these files/u],
    ['no file', () => ['none.jsonl'], 3, /cannot read none\.jsonl/u],
    ['no match', () => ['none-*.jsonl'], 3, /no file matches/u],
  ])('refuses it when there is %s, and writes nothing', async (_name, files, exitCode, message) => {
    const result = await run(['--merge', ...(await files()), '--out', 'refused.jsonl'])
    expect({ exitCode: result.exitCode, stdout: result.stdout }).toEqual({ exitCode, stdout: '' })
    expect(result.stderr).toMatch(message)
    expect(existsSync(join(folder, 'refused.jsonl'))).toBe(false)
  })

  test('delivers no line that changed since it was checked', () => {
    // As these sources would have written it, which are another build than the program.
    const ours = whole
      .split('\n')
      .slice(0, -1)
      .map((line) => remade(line, (each) => (each['build'] = BUILD)))
    const path = join(folder, put('moving.jsonl', `${ours.join('\n')}\n`))
    const parts = mergeParts([path])
    writeFileSync(path, read('moving.jsonl').replace(/"annual\.ac_kwh":\d/u, '"annual.ac_kwh":9'))
    expect(() => [...parts.lines()]).toThrow(/moving\.jsonl:1: changed while the parts were put together/u)
    parts.close()
  })

  test('goes with no option of a run', async () => {
    for (const more of [['--table', table], ['--set', 'title=x'], ['--stages', 'yield'], ['--csv']]) {
      const result = await run(['--merge', one, ...more])
      expect(result).toMatchObject({ exitCode: 2, stdout: '' })
      expect(result.stderr).toContain('--merge joins lines that are worked out already')
    }
  })
})
