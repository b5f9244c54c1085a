import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { ensureBuilt, gablewattWarm, ROOT } from '../cli/binary.js'

interface Run {
  readonly exitCode: number
  readonly stdout: string
  readonly stderr: string
  readonly written: Readonly<Record<string, Buffer>>
}
type Judge = (
  input: { readonly files: object; readonly args: readonly string[] },
  run: Run,
  explained: ReadonlySet<string>,
) => string[]
type Lay = (folder: string, files: Readonly<Record<string, string>>) => object
type Written = (folder: string, files: object) => Record<string, Buffer>
type DoorsOf = (name: string, help: string) => string[]
type OpenedBy = (args: readonly string[], doors: readonly string[]) => string[]

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-judge-'))
const house = join(ROOT, 'examples/lark-hollow.yaml')
let judge: Judge
let resealed: (data: object) => object
let lay: Lay
let written: Written
let doorsOf: DoorsOf
let openedBy: OpenedBy
let result = ''
let line = ''
beforeAll(async () => {
  ensureBuilt()
  // What it needs of the program is built by now.
  const at = (name: string): string => join(ROOT, 'tests/fuzz', name)
  ;({ judge } = (await import(at('judge.mjs'))) as { judge: Judge })
  ;({ sealedAgain: resealed } = (await import(at('written.mjs'))) as { sealedAgain: (data: object) => object })
  ;({ lay, written } = (await import(at('lay.mjs'))) as { lay: Lay; written: Written })
  ;({ doorsOf, openedBy } = (await import(at('opened.mjs'))) as { doorsOf: DoorsOf; openedBy: OpenedBy })
  result = (await gablewattWarm(['size-wire', house, '--json'])).stdout
  line = (await gablewattWarm(['run-fleet', house, '--stages', 'yield', '--jobs', '1', '--jsonl'])).stdout
})
afterAll(() => rmSync(folder, { recursive: true }))

const sound: Run = { exitCode: 0, stdout: 'Wiring\n', stderr: '', written: {} }
const told = (run: Partial<Run>, args: readonly string[] = ['size-wire', 'project.yaml']): string =>
  judge({ files: {}, args }, { ...sound, ...run }, new Set(['known.id'])).join('\n')
type Data = Record<string, never> & { values: Record<string, unknown>; findings: object[] }
const changed = (change: (data: Data) => void, again = true): string => {
  const data = JSON.parse(result) as Data
  change(data)
  return `${JSON.stringify(again ? resealed(data) : data, null, 2)}\n`
}

describe('the judge of a run', () => {
  test('passes what is sound', () => {
    expect(told({})).toBe('')
    expect(judge({ files: {}, args: ['size-wire'] }, { ...sound, stdout: result }, new Set())).toEqual([])
    expect(judge({ files: {}, args: ['run-fleet'] }, { ...sound, stdout: line }, new Set())).toEqual([])
  })

  test.each<[string, Partial<Run>, string]>([
    ['a defect', { exitCode: 70, stderr: 'defect' }, 'exit code 70'],
    ['an end by a signal', { exitCode: -1, stderr: 'x' }, 'exit code -1'],
    ['silence', { exitCode: 3, stdout: '' }, 'without a word'],
    ['a half refusal', { exitCode: 2 }, 'refused, but something stands on stdout'],
    ['a stack', { stderr: '    at run (main.cjs:1:2)\n' }, 'a stack'],
    ['the name of an error', { stderr: 'TypeError: x\n' }, 'a stack'],
    ['no number', { stdout: 'Yield  NaN kWh\n' }, "'NaN' in the output"],
    ['no value', { written: { 'x.csv': Buffer.from('a,undefined\n') } }, "'undefined' in the output"],
    ['what steers a terminal', { stderr: 'x\u001b[2J\n' }, 'control character U+1b'],
    [
      'a file beside a refusal',
      { exitCode: 2, stdout: '', stderr: 'x', written: { x: Buffer.from('1') } },
      'x was written',
    ],
    ['a temporary file', { written: { '.x.1.tmp': Buffer.from('1') } }, 'temporary file left'],
    ['an empty file', { written: { 'x.csv': Buffer.alloc(0) } }, 'x.csv is empty'],
    ['half a PDF', { written: { 'x.pdf': Buffer.from('%PDF-1.7\nx') } }, 'x.pdf is half a PDF'],
    ['half a PDF on stdout', { stdout: '%PDF-1.7\nx' }, 'half a PDF on stdout'],
    ['XML that is none', { written: { 'x.xml': Buffer.from('<a><b></a>') } }, 'x.xml is no XML'],
    ['broken JSON', { stdout: '{\n  "format": "gablewatt-result/4",\n' }, 'broken JSON'],
  ])('tells of %s', (_name, run, words) => {
    expect(told(run)).toContain(words)
  })

  test.each<[string, () => string, string]>([
    [
      'a seal that does not fit',
      () => changed((data) => (data.values['edition'] = 'x'), false),
      'its seal does not fit',
    ],
    ['a value that is missing', () => changed(({ values }) => delete values['panel']), 'wire.schema.json: at'],
    [
      'a key that the envelope lacks',
      () => changed((data) => Object.assign(data, { more: 1 })),
      'result.schema.json: at',
    ],
    [
      'another schema',
      () => changed((data) => Object.assign(data, { schema: '0'.repeat(16) })),
      'bears another schema',
    ],
    [
      'an error beside exit code 0',
      () => changed(({ findings }) => findings.push({ ...findings[0], id: 'known.id', severity: 'error' })),
      'exit code 0 beside an error finding',
    ],
    [
      'a finding without an explanation',
      () => changed(({ findings }) => findings.push({ ...findings[0], id: 'other.id', severity: 'note' })),
      "finding 'other.id' has no explanation",
    ],
    ['a negative zero', () => result.replace(/"breaker_a": \d+/u, '"breaker_a": -0'), '-0 in JSON'],
  ])('tells of a result with %s', (_name, text, words) => {
    expect(told({ stdout: text() })).toContain(words)
  })

  test('looks at each line of a fleet, in files too', () => {
    const wrong = JSON.stringify(resealed({ ...(JSON.parse(line) as object), stages: 5 }))
    const args = ['run-fleet', 'a.yaml', '--jsonl']
    expect(told({ stdout: `${line}${wrong}\n` }, args)).toContain('does not fit fleet-line.schema.json')
    expect(told({ written: { 'x.jsonl': Buffer.from(`${line}${wrong}\n`) } }, args)).toContain('fleet-line.schema.json')
  })

  test('takes the code of a defect that joined lines tell of, and of nothing else', () => {
    const files = { 'a.jsonl': '{"status":"defect"}' }
    const run = { ...sound, exitCode: 70 }
    expect(judge({ files, args: ['run-fleet', '--merge', 'a.jsonl'] }, run, new Set())).toEqual([])
    expect(judge({ files, args: ['run-fleet', 'a.jsonl'] }, run, new Set()).join()).toContain('exit code 70')
  })
})

describe('the folder of a case', () => {
  test('holds the files of the case alone, and shows what a run wrote or changed', () => {
    const place = join(folder, 'case')
    const files = lay(place, { 'a.yaml': 'a', 'b/c.csv': 'c' })
    expect(written(place, files)).toEqual({})
    writeFileSync(join(place, 'new.txt'), 'n')
    writeFileSync(join(place, 'a.yaml'), 'other')
    expect(Object.keys(written(place, files)).toSorted()).toEqual(['a.yaml', 'new.txt'])
    lay(place, { 'a.yaml': 'a' })
    expect(readFileSync(join(place, 'a.yaml'), 'utf8')).toBe('a')
    expect(readdirSync(place, { recursive: true, withFileTypes: true }).filter((one) => one.isFile())).toHaveLength(1)
  })
})

describe('the doors of a subcommand', () => {
  const help = [
    'Usage: gablewatt try-it [options] <project.yaml> [more.csv...]',
    '',
    '  project.yaml         the project file',
    '  --near <lat,lon>     nearest first',
    '  --new-door <x.json>  something that is read',
    '  -o, --out <file>     write to a file',
    '',
  ].join('\n')

  test('are the arguments and options that name a file to be read, a new one too', () => {
    const doors = doorsOf('try-it', help)
    expect(doors).toEqual(['try-it argument 1, project.yaml', 'try-it argument 2, more.csv', 'try-it --new-door'])
    expect(openedBy(['try-it', 'a.yaml', '--new-door', 'x'], doors)).toEqual([doors[0], doors[2]])
    expect(openedBy(['try-it', 'a.yaml', 'b.csv'], doors)).toEqual(doors.slice(0, 2))
    expect(openedBy(['other', 'a.yaml', '--new-door', 'x'], doors)).toEqual([])
  })
})
