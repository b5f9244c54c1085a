import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { ensureBuilt, gablewattWarm, ROOT } from '../cli/binary.js'
import { cellNumber } from '../../src/fleet/cell-number.js'
import { delimitersIn, headerOf } from '../../src/values/index.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-columns-'))
const plain = join(ROOT, 'examples/fleet/template.yaml')
const templateText = readFileSync(plain, 'utf8')
  .replaceAll('equipment.yaml', join(ROOT, 'examples/fleet/equipment.yaml'))
  .replace(/^fleet:.*$/mu, '')
const put = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}
const template = (name: string, part: string): string => put(name, `${templateText}\n${part}\n`)
const run = (args: readonly string[]) =>
  gablewattWarm(['run-fleet', ...args, '--stages', 'yield', '--jobs', '1', '--allow-outside'], { cwd: folder })
const linesOf = (text: string): Record<string, unknown>[] =>
  text
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line) as Record<string, unknown>)
const errorsOf = (text: string): string[] => text.split('\n').filter((line) => /\S/u.test(line))

beforeAll(ensureBuilt, 90_000)
afterAll(() => rmSync(folder, { recursive: true }))

const OWN = 'fleet: { extra_columns: [customer.phone, customer.number] }'

describe('columns of one’s own', () => {
  test('pass through to lines, JSON and CSV, and change nothing that is computed', async () => {
    const own = template('own.yaml', OWN)
    const table = put(
      'own.csv',
      'id,customer.phone,title,customer.number\na,555-0100,One (invented),007\nb,,Two (invented),=1+1\n',
    )
    const lines = await run([own, '--table', table, '--jsonl'])
    expect(lines).toMatchObject({ exitCode: 0, stderr: '' })
    const [a, b] = linesOf(lines.stdout)
    expect([a?.['extra'], b?.['extra']]).toEqual([
      { 'customer.phone': '555-0100', 'customer.number': '007' },
      { 'customer.number': '=1+1' },
    ])
    const bare = await run([own, '--table', put('bare.csv', 'id,title\na,One (invented)\n'), '--jsonl'])
    expect(linesOf(bare.stdout)[0]?.['stages']).toEqual(a?.['stages'])
    const csv = await run([own, '--table', table, '--csv'])
    const [head, one, two] = csv.stdout.split('\r\n')
    expect(head).toMatch(/^project,title,customer\.phone,customer\.number,status,/u)
    expect(one).toMatch(/^a,One \(invented\),555-0100,007,ok,/u)
    // A text that a spreadsheet would run is defused.
    expect(two).toMatch(/^b,Two \(invented\),,'=1\+1,ok,/u)
    const json = JSON.parse((await run([own, '--table', table, '--json'])).stdout) as {
      values: { projects: { extra: object }[] }
    }
    expect(json.values.projects[0]?.extra).toEqual(a?.['extra'])
  })

  test('one of them names the houses', async () => {
    const named = template('named.yaml', 'fleet: { extra_columns: [number], name_column: number }')
    const table = put('named.csv', 'number,title\nK-17,One (invented)\nK-18,Two (invented)\nK-17,Three (invented)\n')
    const { exitCode, stdout } = await run([named, '--table', table, '--jsonl'])
    expect(exitCode).toBe(2)
    expect(linesOf(stdout).map(({ name, extra }) => [name, extra])).toEqual([
      ['K-17', { number: 'K-17' }],
      ['K-18', { number: 'K-18' }],
      ['row-3', { number: 'K-17' }],
    ])
    const without = await run([named, '--table', put('unnamed.csv', 'title\nOne (invented)\n'), '--jsonl'])
    expect(errorsOf(without.stderr)).toEqual([expect.stringContaining("there is no column 'number'")])
    const both = await run([named, '--table', put('both.csv', 'id,number\na,b\n'), '--jsonl'])
    expect(both.stderr).toContain("leave 'id' out")
  })

  test.each([
    ['customer.fone', 'nor one of fleet.extra_columns; did you mean customer.phone?'],
    ['favourite', 'a column of your own is declared under fleet.extra_columns of the template'],
    ['fleet.extra_columns', 'write it into the template'],
  ])('a heading that is not declared, %s, is an error', async (heading, message) => {
    const own = template('own.yaml', OWN)
    const result = await run([own, '--table', put('wrong.csv', `id,${heading}\na,1\n`), '--jsonl'])
    expect(result).toMatchObject({ exitCode: 2, stdout: '' })
    expect(result.stderr).toContain(message)
    expect(result.stderr).toContain('wrong.csv:1:4: ')
  })

  test.each([
    ['fleet: { extra_columns: [title] }', "'title' is a column of run-fleet itself"],
    ['fleet: { extra_columns: [site.latitude_deg] }', "'site.latitude_deg' is a path of the project file"],
    ['fleet: { extra_columns: [a, a] }', "'a' stands twice"],
    ['fleet: { extra_columns: [a], name_column: b }', "'b' is none of fleet.extra_columns"],
    ['fleet: { extra_colums: [a] }', 'did you mean extra_columns?'],
    ['fleet: { extra_columns: [a=b] }', 'fleet.extra_columns'],
  ])('%s is told with its place, by the fleet and for the template alone', async (part, message) => {
    const wrong = template('wrong.yaml', part)
    const fleet = await run([wrong, '--table', put('a.csv', 'id\na\n'), '--jsonl'])
    const alone = await gablewattWarm(['check-project', wrong, '--allow-outside'])
    for (const { exitCode, stdout, stderr } of [fleet, alone]) {
      expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' })
      expect(stderr).toContain(message)
      expect(stderr).toMatch(/wrong\.yaml:\d+:\d+/u)
    }
  })

  test('--set does not change what holds for the table', async () => {
    const result = await run([plain, '--table', put('a.csv', 'id\na\n'), '--set', 'fleet.extra_columns=[x]'])
    expect(result).toMatchObject({ exitCode: 2, stdout: '' })
    expect(result.stderr).toContain('read from the template')
  })
})

describe('--columns', () => {
  const table = () => put('choose.csv', 'id,customer.phone\na,555-0100\nb,\n')

  test('gives those columns in that order, by heading, own heading or figure', async () => {
    const own = template('own.yaml', OWN)
    const chosen = 'customer.phone,yield_kwh,project,yield.annual.poa_kwh_m2,yield.arrays.main.modules'
    const { exitCode, stdout, stderr } = await run([own, '--table', table(), '--csv', '--columns', chosen])
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' })
    const [head, one] = stdout.split('\r\n')
    expect(head).toBe(chosen)
    const [line] = linesOf((await run([own, '--table', table(), '--jsonl'])).stdout) as [
      { stages: { yield: Record<string, number> } },
    ]
    const figures = line.stages.yield
    expect(one).toBe(
      ['555-0100', figures['annual.ac_kwh'], 'a', figures['annual.poa_kwh_m2'], figures['arrays.main.modules']].join(
        ',',
      ),
    )
  })

  test.each([
    ['custmer.phone', "there is no 'custmer.phone'; did you mean customer.phone?"],
    ['project,yield_kw', "there is no 'yield_kw'; did you mean yield_kwh?"],
    ['wire.panel.complies', "'wire.panel.complies' is of the stage 'wire', which --stages leaves out"],
    ['project,project', "'project' stands twice"],
  ])('%s is told before the work', async (columns, message) => {
    const own = template('own.yaml', OWN)
    const result = await run([own, '--table', table(), '--csv', '--columns', columns])
    expect(result).toMatchObject({ exitCode: 2, stdout: '' })
    expect(result.stderr).toContain(message)
  })

  test('a figure that no house has is told', async () => {
    const { exitCode, stdout, stderr } = await run([
      plain,
      '--table',
      put('one.csv', 'id\na\n'),
      '--csv',
      '--columns',
      'project,yield.anual.ac_kwh',
    ])
    expect({ exitCode, stdout }).toEqual({ exitCode: 0, stdout: 'project,yield.anual.ac_kwh\r\na,\r\n' })
    expect(stderr).toContain("no house has a figure 'yield.anual.ac_kwh'; did you mean yield.annual.ac_kwh?")
  })

  test('goes with --csv', async () => {
    expect((await run([plain, '--columns', 'project'])).stderr).toContain('--columns goes with --csv')
  })
})

describe('marks between columns and decimals', () => {
  const stages = async (args: readonly string[]) =>
    linesOf((await run([plain, '--jsonl', ...args])).stdout).map((line) => line['stages'])

  test('semicolons and tabs are read from the headings, decimal commas are told', async () => {
    const header = 'id,site.latitude_deg,title'
    const expected = await stages(['--table', put('comma.csv', `${header}\na,38.5,"One; (invented)"\n`)])
    const semicolons = put('semi.csv', `${header.replaceAll(',', ';')}\na;38,5;"One; (invented)"\n`)
    const tabs = put('tabs.tsv', `${header.replaceAll(',', '\t')}\r\na\t38.5\tOne, (invented)\r\n`)
    expect(await stages(['--table', semicolons, '--decimal-comma'])).toEqual(expected)
    expect(await stages(['--table', tabs])).toEqual(expected)
    const told = await run([plain, '--table', semicolons, '--decimal-comma', '--jsonl'])
    expect(told.stderr).toBe(`${semicolons}: columns are parted by ';', decimals by a comma\n`)
  })

  test('a number that can be read in two ways is refused in its cell', async () => {
    const table = put('two.csv', 'id;site.latitude_deg\na;38,5\nb;38.5\nc;1.038,5\n')
    const without = await run([plain, '--table', table, '--jsonl'])
    expect(linesOf(without.stdout).map(({ status }) => status)).toEqual(['invalid', 'ok', 'invalid'])
    expect(without.stderr).toMatch(/two\.csv:2:3: row-1: .*'38,5' has a comma; with --decimal-comma it is 38\.5/u)
    const told = await run([plain, '--table', table, '--jsonl', '--decimal-comma'])
    expect(linesOf(told.stdout).map(({ status }) => status)).toEqual(['ok', 'invalid', 'invalid'])
    expect(told.stderr).toMatch(/two\.csv:3:3: .*'38\.5' has a point, and --decimal-comma says/u)
    expect(told.stderr).toMatch(/two\.csv:4:3: .*no mark between thousands/u)
  })

  test('headings with two marks are not guessed; --delimiter decides', async () => {
    const table = put('mixed.csv', 'id;title,x\na;b\n')
    const result = await run([plain, '--table', table, '--jsonl'])
    expect(result).toMatchObject({ exitCode: 2, stdout: '' })
    expect(result.stderr).toContain("mixed.csv:1:1: the headings hold ',' and ';'; say with --delimiter")
    const told = await run([plain, '--table', table, '--jsonl', '--delimiter', 'semicolon'])
    expect(told.stderr).toContain("the heading 'title,x'")
    expect((await run([plain, '--table', table, '--delimiter', 'x'])).stderr).toContain(
      '--delimiter x: write comma, semicolon, tab, bar',
    )
  })

  test.each([
    ['12', false, { text: '12' }],
    ['1,5', true, { text: '1.5' }],
    ['-1,5e3', true, { text: '-1.5e3' }],
    ['1,234,567', false, 'no mark between thousands'],
    ['1.5', true, 'has a point'],
    ['1,5', false, 'has a comma'],
    ['[1,5]', true, { text: '[1,5]' }],
    ['N/A', true, { text: 'N/A' }],
  ])('%s with decimal commas %s', (text, decimalComma, expected) => {
    const found = cellNumber(text, decimalComma)
    if (typeof expected === 'string') expect(found).toEqual({ trouble: expect.stringContaining(expected) })
    else expect(found).toEqual(expected)
  })

  test('the first line counts, without what stands in quotes', () => {
    expect(delimitersIn(headerOf(['\uFEFF\n', 'a;"b,', 'c"\n1,2\n']))).toEqual([';'])
    expect(delimitersIn('a')).toEqual([])
    expect(delimitersIn('a\tb,c')).toEqual([',', '\t'])
  })
})
