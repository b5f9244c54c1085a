import {
  appendFileSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { execFileSync } from 'node:child_process'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import * as fc from '../fast-check.js'
import { afterAll, describe, expect, test } from 'vitest'
import {
  baselineFigures,
  compareProject,
  emptyOutcome,
  figuresOf,
  fileJobs,
  FleetError,
  junitProject,
  junitXml,
  openJournal,
  progressBar,
  readBaseline,
  readShard,
  readTolerance,
  runInOrder,
  shardRange,
  sortMoves,
  tableJobs,
  writeBaseline,
  type FleetJob,
  type FleetOutcome,
} from '../../src/fleet/index.js'
import { expandPattern } from '../../src/fleet/glob.js'
import { stampOf, stampsAsRead } from '../../src/fleet/input-stamp.js'
import { nameMatcher } from '../../src/fleet/match-name.js'
import { sealed } from '../../src/seal/index.js'

const TOOL = 'gablewatt 0.1.0'
const folder = mkdtempSync(join(tmpdir(), 'gablewatt-fleet-parts-'))
afterAll(() => rmSync(folder, { recursive: true }))
const put = (name: string, text: string): string => {
  const path = join(folder, name)
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, text)
  return path
}
/** With a new seal over what it holds now. */
const resealed = (one: object): object => {
  const { seal: _, ...content } = one as { readonly seal?: string }
  return sealed(content)
}
const job = (index: number, name = `h${index}`): FleetJob => ({
  index,
  name,
  path: 'p.yaml',
  overrides: [`a=${index}`],
})
const outcomeOf = (one: FleetJob, more: Partial<FleetOutcome> = {}): FleetOutcome => ({ ...emptyOutcome(one), ...more })

describe('tables', () => {
  test('a row becomes overrides; an empty cell leaves the template alone; --set comes last', () => {
    const table = put('ok.csv', 'id,site.latitude_deg,title\r\nh1,38.5,"One, two"\r\nh2,,x=y\r\n')
    const jobs = [...tableJobs('t.yaml', table, ['title=Last'])]
    expect(jobs.map(({ name, overrides }) => [name, overrides])).toEqual([
      ['h1', ['site.latitude_deg=38.5', 'title=One, two', 'title=Last']],
      ['h2', ['title=x=y', 'title=Last']],
    ])
    expect(jobs[0]?.row?.cells[1]).toEqual({ key: 'title', line: 2, column: 9 })
  })

  test('bad rows say where, and the others stay', () => {
    const table = put('bad.csv', 'id,title\nh1,1\nh1,2\nh2,1,2\n../x,1\n,3\nh3,"b"c\n')
    const jobs = [...tableJobs('t.yaml', table, [])]
    expect(
      jobs.map(({ name, problems }) => [
        name,
        problems?.map((p) => `${p.place.slice(folder.length + 1)} ${p.key}: ${p.message}`),
      ]),
    ).toEqual([
      ['h1', undefined],
      ['row-2', ['bad.csv:3:1 id: the id h1 is that of line 2 already']],
      ['row-3', ['bad.csv:4:6 : the row has 3 cells, the headings are 2']],
      ['row-4', [expect.stringContaining('bad.csv:5:1 id: an id is letters')]],
      ['row-5', undefined],
      ['row-6', [expect.stringContaining('bad.csv:7:7 title: text follows a closing quote')]],
    ])
  })

  test.each([
    ['', 'the table is empty'],
    ['id,titel\n1,2\n', "head.csv:1:4: the heading 'titel': no key 'titel' at the top level; did you mean title?"],
    ['id,\nx,y\n', 'head.csv:1:4: a column without a heading'],
    ['id,title,id\n1,2,3\n', "head.csv:1:10: two columns are headed 'id'"],
    ['a=b\n1\n', 'head.csv:1:1: a heading is a path'],
  ])('headings %j are refused', (text, message) => {
    const table = put('head.csv', text)
    expect(() => [...tableJobs('t.yaml', table, [])]).toThrow(message)
  })

  test('a table that is not UTF-8 is refused', () => {
    const table = join(folder, 'latin.csv')
    writeFileSync(table, Buffer.from([0x69, 0x64, 0x0a, 0xe9, 0x0a]))
    expect(() => [...tableJobs('t.yaml', table, [])]).toThrow('not UTF-8')
  })
})

describe('files, folders, patterns', () => {
  mkdirSync(join(folder, 'many/inside'), { recursive: true })
  for (const name of ['many/b.yaml', 'many/a.yml', 'many/inside/c.yaml', 'many/.hidden.yaml'])
    put(name, '# x\nformat: gablewatt/2\n')
  put('many/equipment.yaml', 'modules: {}\n')
  put('many/notes.txt', 'format: gablewatt/2\n')

  test('a folder gives its projects, sorted, not other YAML files', () => {
    expect(fileJobs([join(folder, 'many')], []).map(({ name }) => name)).toEqual(['a', 'b', 'inside/c'])
  })

  test('patterns', () => {
    const names = (pattern: string): string[] => fileJobs([join(folder, pattern)], []).map(({ name }) => name)
    expect(names('many/*.yaml')).toEqual(['b', 'equipment'])
    expect(names('many/**/*.yaml')).toEqual(['b', 'equipment', 'c'])
    expect(names('many/{a,b}.y*')).toEqual(['a', 'b'])
    expect(names('many/[!b]*.y?ml')).toEqual(['equipment'])
    expect(() => names('many/*.json')).toThrow('no file matches')
    expect(() => names('many/none.yaml')).toThrow('no such file')
    expect(() => fileJobs([join(folder, 'many', 'inside', '..', '..', 'empty-not-there')], [])).toThrow('ENOENT')
  })

  test.each([
    ['[z-a].yaml', "the range 'z-a' runs backwards; write 'a-z'"],
    ['[ab.yaml', "the list that opens with '[' is not closed"],
    ['{a,b.yaml', "the choice that opens with '{' is not closed"],
    ['a}.yaml', "a '}' closes nothing"],
    ['{a,b}'.repeat(22), 'its braces stand for more than 1000 patterns'],
    ['a'.repeat(5000) + '*', 'it has more than 4096 characters'],
    [`${'{'.repeat(11)}${'a,b}'.repeat(11)}${'{a,b}'.repeat(30)}`, 'its braces stand for more than 1000 patterns'],
  ])('the pattern %s is refused at once, in words', (pattern, message) => {
    const before = performance.now()
    const refused = (() => {
      try {
        return fileJobs([join(folder, 'many', pattern)], [])
      } catch (error) {
        return error
      }
    })()
    expect(refused).toBeInstanceOf(FleetError)
    expect(refused).toMatchObject({ exitCode: 2 })
    expect((refused as FleetError).message).toContain(message)
    expect(performance.now() - before).toBeLessThan(2000)
  })

  test('patterns that many ways lead through end soon', () => {
    const deep = `deep/${'a/'.repeat(30)}`
    put(`${deep}${'a'.repeat(60)}.yaml`, 'format: gablewatt/2\n')
    const found = (pattern: string): number => expandPattern(join(folder, 'deep', pattern)).length
    const before = performance.now()
    expect(found(`${'**/'.repeat(12)}*.yaml`)).toBe(1)
    expect(found(`${'**/a/'.repeat(12)}**/*.yaml`)).toBe(1)
    expect(found(`**/${'*a'.repeat(25)}*b`)).toBe(0)
    expect(found(`**/${'a*'.repeat(25)}.yaml`)).toBe(1)
    expect(found('**/{*,a*,*a*,a*a*}.yaml')).toBe(1)
    expect(performance.now() - before).toBeLessThan(3000)
  })

  test('lists: ranges, a bracket or dash of its own, anything but', () => {
    for (const name of ['p1', 'p5', 'p-', 'p]', 'p!', 'pé', '.p1']) put(`lists/${name}`, '')
    const found = (pattern: string): string =>
      expandPattern(join(folder, 'lists', pattern))
        .map((path) => path.slice(-1))
        .join('')
    expect(found('p[1-4]')).toBe('1')
    expect(found('p[!0-9]')).toBe('!-]é')
    expect(found('p[^]!-]')).toBe('15é')
    expect(found('p[]-]')).toBe('-]')
    expect(found('p[à-ü]')).toBe('é')
    expect(found('.p?')).toBe('1')
  })

  test('against every name of a few characters, as an expression of the language has it', () => {
    const letter = fc.constantFrom('a', 'b', '*', '?', '[ab]', '[!a]')
    fc.assert(
      fc.property(fc.array(letter, { maxLength: 6 }), fc.array(fc.constantFrom('a', 'b'), { maxLength: 6 }), (p, n) => {
        const expression = p.map((one) => one.replace('*', '.*').replace('?', '.').replace('!', '^')).join('')
        expect(nameMatcher(p.join(''), '')(n.join(''))).toBe(new RegExp(`^${expression}$`).test(n.join('')))
      }),
      { numRuns: 500 },
    )
  })

  test('a pipe among the projects of a folder, or as a table, is told and not waited for', () => {
    mkdirSync(join(folder, 'pipes'))
    execFileSync('mkfifo', [join(folder, 'pipes/p.yaml'), join(folder, 'pipes/t.csv')])
    expect(fileJobs([join(folder, 'pipes')], []).map(({ name }) => name)).toEqual(['p'])
    expect(() => [...tableJobs('t.yaml', join(folder, 'pipes/t.csv'), [])]).toThrow('it is not a regular file')
    expect(() => [...tableJobs('t.yaml', '/dev/zero', [])]).toThrow('it is not a regular file')
  })

  test('a file that is named twice is one project; files of one name are told apart by their folders', () => {
    const [b, c] = [join(folder, 'many/b.yaml'), join(folder, 'many/inside/c.yaml')]
    expect(fileJobs([b, c, b], []).map(({ name }) => name)).toEqual(['b', 'c'])
    put('many/inside/b.yaml', 'format: gablewatt/2\n')
    const names = fileJobs([b, join(folder, 'many/inside/b.yaml')], []).map(({ name }) => name)
    expect(new Set(names).size).toBe(2)
    expect(names.every((name) => name.endsWith('/b'))).toBe(true)
  })
})

describe('shards', () => {
  test('together they are the whole, in order, as equal as can be', () => {
    fc.assert(
      fc.property(fc.nat(500), fc.integer({ min: 1, max: 40 }), (count, of) => {
        const ranges = Array.from({ length: of }, (_, i) => shardRange(count, { part: i + 1, of }))
        expect(ranges.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, i) => from + i))).toEqual(
          Array.from({ length: count }, (_, i) => i),
        )
        const sizes = ranges.map(({ from, to }) => to - from)
        expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1)
      }),
    )
  })

  test.each(['0/3', '4/3', '2', 'a/b', '1/0', '-1/3'])('%s is refused', (text) =>
    expect(() => readShard(text)).toThrow('--shard'),
  )
  test('2/8', () => expect(readShard('2/8')).toEqual({ part: 2, of: 8 }))
})

describe('order', () => {
  test('outcomes come in the order of the projects, whatever the workers do, and few wait', async () => {
    let [running, most, started] = [0, 0, 0]
    const run = async (one: FleetJob): Promise<FleetOutcome> => {
      started += 1
      running += 1
      most = Math.max(most, running)
      await new Promise((resolve) => setTimeout(resolve, (one.index * 7) % 5))
      running -= 1
      return outcomeOf(one)
    }
    const jobs = Array.from({ length: 200 }, (_, i) => job(i))
    const seen: number[] = []
    let ahead = 0
    for await (const { index } of runInOrder(jobs, { run, atOnce: 2, close: () => Promise.resolve() })) {
      seen.push(index)
      ahead = Math.max(ahead, started - seen.length)
    }
    expect(seen).toEqual(jobs.map(({ index }) => index))
    expect(ahead).toBeLessThanOrEqual(32)
  })

  test('whoever stops early closes the workers', async () => {
    let closed = 0
    const runner = {
      run: (one: FleetJob) => Promise.resolve(outcomeOf(one)),
      atOnce: 2,
      close: () => Promise.resolve(void (closed += 1)),
    }
    for await (const outcome of runInOrder(
      Array.from({ length: 50 }, (_, i) => job(i)),
      runner,
    ))
      if (outcome.index === 3) break
    expect(closed).toBe(1)
  })
})

describe('journal', () => {
  const input = put('input.yaml', 'one')
  const done = (one: FleetJob): FleetOutcome =>
    outcomeOf(one, { inputs: [stampOf(input)], stages: { yield: { kwh: one.index } } })
  const outcomeIn = (line: string): object => (JSON.parse(line) as { outcome: object }).outcome
  const again = (line: string, change: object): string => {
    const { seal: _, ...content } = JSON.parse(line) as Record<string, unknown>
    return JSON.stringify(sealed({ ...content, ...change }))
  }
  const open = (name: string, resume: boolean, plan = 'p') =>
    openJournal({ path: join(folder, name), plan, tool: TOOL, resume })

  test('gives back what was done, with a torn last line, and nothing else', () => {
    const first = open('a.journal', false)
    for (const i of [0, 1, 2]) first.add(job(i), done(job(i)))
    first.close()
    appendFileSync(join(folder, 'a.journal'), '{"key":"torn","inputs":[],"outco')
    const second = open('a.journal', true)
    expect(second.held).toBe(3)
    expect(second.recall(job(1))).toEqual(done(job(1)))
    expect(second.recall(job(3))).toBeUndefined()
    expect(second.recall({ ...job(1), overrides: ['a=9'] })).toBeUndefined()
    expect(open('a.journal', true, 'other plan').recall(job(1))).toBeUndefined()
    second.add(job(3), done(job(3)))
    second.close()
    expect(
      readFileSync(join(folder, 'a.journal'), 'utf8')
        .split('\n')
        .slice(0, -1)
        .every((line) => line.endsWith('}')),
    ).toBe(true)
    expect(open('a.journal', true).recall(job(3))).toEqual(done(job(3)))
  })

  test('works out again what was made from a file that has changed', () => {
    const changing = put('changing.yaml', 'one')
    const journal = open('b.journal', false)
    journal.add(job(0), outcomeOf(job(0), { inputs: [stampOf(changing)] }))
    journal.close()
    expect(open('b.journal', true).recall(job(0))).toBeDefined()
    writeFileSync(changing, 'longer')
    expect(open('b.journal', true).recall(job(0))).toBeUndefined()
  })

  test('works out again what was made from a file of the same length and time of writing', () => {
    const swapped = put('swapped.yaml', 'one')
    const writtenAt = new Date('2026-03-02T12:00:00Z')
    utimesSync(swapped, writtenAt, writtenAt)
    const journal = open('swapped.journal', false)
    journal.add(job(0), outcomeOf(job(0), { inputs: [stampOf(swapped)] }))
    journal.close()
    // The clock of files goes in steps.
    const before = statSync(swapped).ctimeMs
    do {
      writeFileSync(swapped, 'two')
      utimesSync(swapped, writtenAt, writtenAt)
    } while (statSync(swapped).ctimeMs === before)
    expect(statSync(swapped).mtimeMs).toBe(writtenAt.getTime())
    expect(open('swapped.journal', true).recall(job(0))).toBeUndefined()
  })

  test('does not trust a stamp of a file that may have changed while it was read', () => {
    const changing = put('while.yaml', 'one')
    const { ctimeMs } = statSync(changing)
    const journal = open('while.journal', false)
    for (const [index, sinceMs] of [ctimeMs - 1, ctimeMs + 5, ctimeMs + 1000].entries())
      journal.add(job(index), outcomeOf(job(index), { inputs: stampsAsRead([changing], sinceMs) }))
    journal.close()
    const again = open('while.journal', true)
    expect([0, 1, 2].map((index) => again.recall(job(index)) !== undefined)).toEqual([false, false, true])
  })

  test('holds an outcome for its own file and its own columns alone', () => {
    const journal = open('own.journal', false)
    const mine = { ...job(1), extra: { owner: 'A (invented)' } }
    journal.add(mine, done(mine))
    journal.close()
    const again = open('own.journal', true)
    expect(again.recall(mine)).toBeDefined()
    expect(again.recall({ ...mine, path: 'other.yaml' })).toBeUndefined()
    expect(again.recall({ ...mine, extra: { owner: 'B (invented)' } })).toBeUndefined()
    expect(again.recall({ ...mine, name: 'h9' })).toBeUndefined()
    expect(again.recall({ ...mine, index: 2 })).toBeUndefined()
  })

  test('works out again what wrote a file that is gone', () => {
    const journal = open('written.journal', false)
    journal.add(job(0), outcomeOf(job(0), { files: ['h0/wire.json'] }))
    journal.close()
    const inFolder = (outputFolder: string) =>
      openJournal({ path: join(folder, 'written.journal'), plan: 'p', tool: TOOL, resume: true, outputFolder })
    expect(inFolder(folder).recall(job(0))).toBeUndefined()
    mkdirSync(join(folder, 'h0'), { recursive: true })
    put('h0/wire.json', '{}')
    expect(inFolder(folder).recall(job(0))).toBeDefined()
  })

  test.each<[string, (line: string) => string]>([
    ['no outcome', (line) => line.replace(/"outcome":\{.*\},"seal"/u, '"outcome":null,"seal"')],
    ['a number for its stages', (line) => line.replace(/"stages":\{.*?\}\}/u, '"stages":5')],
    ['another figure', (line) => line.replace('"kwh":1', '"kwh":99999')],
    ['one letter changed', (line) => line.replace('input.yaml', 'inpvt.yaml')],
    ['no seal', (line) => line.replace(/,"seal":"[^"]*"/u, '')],
    ['its end cut off', (line) => line.slice(0, -20)],
    ['no outcome, and a new seal', (line) => again(line, { outcome: null })],
    ['a number for its stages, and a new seal', (line) => again(line, { outcome: { ...outcomeIn(line), stages: 5 } })],
    [
      'the name of another house, and a new seal',
      (line) => again(line, { outcome: { ...outcomeIn(line), name: 'h2' } }),
    ],
    [
      'a defect, which no journal keeps, and a new seal',
      (line) => again(line, { outcome: { ...outcomeIn(line), status: 'defect' } }),
    ],
    [
      'the place of another house, and a new seal',
      (line) => again(line, { outcome: { ...outcomeIn(line), index: 2 } }),
    ],
    ['a key twice', (line) => line.replace('"outcome":{', '"outcome":{"status":"failed",')],
    ['a number beyond all', (line) => line.replace('"title":null', '"title":1e999')],
    ['a negative place, and a new seal', (line) => again(line, { outcome: { ...outcomeIn(line), index: -1 } })],
    ['words that are no JSON', () => '{"format":"gablewatt-fleet-journal/1",'],
  ])('a line with %s is told and its project worked out again', (_name, change) => {
    const path = join(folder, 'damaged.journal')
    const journal = open('damaged.journal', false)
    for (const i of [0, 1, 2]) journal.add(job(i), done(job(i)))
    journal.close()
    const lines = readFileSync(path, 'utf8').split('\n')
    const changed = change(lines[1] ?? '')
    expect(changed).not.toBe(lines[1])
    writeFileSync(path, [lines[0], changed, ...lines.slice(2)].join('\n'))
    const second = open('damaged.journal', true)
    expect(second.recall(job(1))).toBeUndefined()
    expect([second.recall(job(0)), second.recall(job(2))]).toEqual([done(job(0)), done(job(2))])
    if (!_name.includes('another house')) expect(second.damaged).toEqual([2])
    second.add(job(1), done(job(1)))
    second.close()
    expect(open('damaged.journal', true).recall(job(1))).toEqual(done(job(1)))
  })

  test('a file that is no journal is left as it is, with --resume and without', () => {
    const table = put('table.journal', 'id,title\nh1,One\n')
    for (const resume of [true, false]) {
      expect(() => open('table.journal', resume)).toThrow(`${table} is no journal of run-fleet, or a damaged one`)
      expect(readFileSync(table, 'utf8')).toBe('id,title\nh1,One\n')
    }
  })

  test('what another build finished is refused, and taken with a warning where that is wished', () => {
    const path = join(folder, 'other.journal')
    const journal = open('other.journal', false)
    for (const i of [0, 1]) journal.add(job(i), done(job(i)))
    journal.close()
    const [first = '', second = ''] = readFileSync(path, 'utf8').split('\n')
    const [whole, other] = [again(first, {}), again(second, { build: '0123456789abcdef' })]
    writeFileSync(path, `${whole}\n${other}\n`)
    expect(() => open('other.journal', true)).toThrow(
      /begun by build 0123456789abcdef of the program.*leave --resume out to begin anew, or take it with --use-anyway/u,
    )
    const anyway = openJournal({ path, plan: 'p', tool: TOOL, resume: true, useAnyway: true })
    expect(anyway.recall(job(0))).toEqual(done(job(0)))
    expect(anyway.recall(job(1))?.findings).toMatchObject([{ severity: 'warning', id: 'fleet.other-build' }])
    anyway.close()
    writeFileSync(path, `${whole}\n${again(second, { schema: '0123456789abcdef', build: '0123456789abcdef' })}\n`)
    expect(() => openJournal({ path, plan: 'p', tool: TOOL, resume: true, useAnyway: true })).toThrow(
      /leave --resume out to begin anew$/u,
    )
    expect(readFileSync(path, 'utf8')).toContain('0123456789abcdef')
  })

  test('tries again what could not be worked out, and begins anew without --resume', () => {
    const journal = open('c.journal', false)
    journal.add(job(0), outcomeOf(job(0), { status: 'invalid' }))
    journal.add(job(1), done(job(1)))
    journal.close()
    expect(open('c.journal', true).held).toBe(1)
    expect(open('c.journal', false).held).toBe(0)
    expect(open('c.journal', true).held).toBe(0)
  })
})

describe('figures and baseline', () => {
  test('figures are flat, by id, to six digits', () => {
    expect(
      figuresOf(
        {
          a: 1 / 3,
          b: { c: true },
          list: [{ id: 'x', v: 2 }, { v: 3 }],
          words: ['p', 'q'],
          none: null,
          gone: undefined,
        },
        ['id'],
      ),
    ).toEqual({
      a: 0.333333,
      'b.c': true,
      'list.x.v': 2,
      'list.2.v': 3,
      words: 'p q',
      none: null,
    })
    expect(() => figuresOf({ a: Number.NaN })).toThrow('NaN')
  })

  test('moves: numbers by percent, words and comings and goings always over', () => {
    const was = { project: { status: 'ok' }, yield: { kwh: 1000, name: 'x', zero: 0, gone: 1 } }
    const is = { project: { status: 'ok' }, yield: { kwh: 1004, name: 'y', zero: 0.1 }, wire: { breaker_a: 20 } }
    const moves = sortMoves(compareProject('h', was, is, 0.5))
    expect(moves.map(({ stage, key, changePct, over }) => [stage, key, changePct, over])).toEqual([
      ['wire', 'breaker_a', undefined, true],
      ['yield', 'gone', undefined, true],
      ['yield', 'name', undefined, true],
      ['yield', 'zero', undefined, true],
      ['yield', 'kwh', 0.4, false],
    ])
    expect(compareProject('h', was, is, 0.3).find(({ key }) => key === 'kwh')?.over).toBe(true)
    expect(compareProject('h', was, was, 0)).toEqual([])
    expect(compareProject('h', undefined, is, 99)).toMatchObject([{ key: 'status', is: 'ok', over: true }])
    expect(compareProject('h', was, undefined, 99)).toMatchObject([{ key: 'status', was: 'ok', over: true }])
  })

  test('tolerance wants its sign', () => {
    expect(readTolerance('0.5%')).toBe(0.5)
    expect(readTolerance('2 %')).toBe(2)
    for (const text of ['0.5', 'x%', '-1%', '%']) expect(() => readTolerance(text)).toThrow('percentage')
  })

  test('a baseline is read as it was written; a finding that comes is a move', () => {
    const figures = baselineFigures(
      outcomeOf(job(0), {
        status: 'failed',
        stages: { wire: { breaker_a: 20 } },
        findings: [
          { stage: 'wire', severity: 'error', id: 'wire.x', where: '', message: 'a' },
          { stage: 'wire', severity: 'note', id: 'wire.n', where: '', message: 'b' },
        ],
      }),
    )
    expect(figures).toEqual({ project: { status: 'failed' }, wire: { breaker_a: 20, findings: 'error wire.x' } })
    const path = put('baseline.json', writeBaseline(new Map([['h', figures]]), TOOL))
    expect(readBaseline(path)?.projects.get('h')).toEqual(figures)
    expect(readBaseline(path)?.otherBuild).toBeUndefined()
    const other = resealed({ ...(JSON.parse(readFileSync(path, 'utf8')) as object), build: '0123456789abcdef' })
    expect(readBaseline(put('other-build.json', JSON.stringify(other)))).toMatchObject({
      otherBuild: '0123456789abcdef',
    })
    expect(readBaseline(join(folder, 'none.json'))).toBeUndefined()
    for (const text of ['x', '[]', '{"format":"other"}']) {
      for (const replace of [false, true]) {
        expect(() => readBaseline(put('broken.json', text), replace)).toThrow(/broken\.json: (?:not JSON|no baseline)/u)
      }
    }
  })

  test.each<[string, (data: { format: string; projects: Record<string, unknown>; seal?: string }) => object, RegExp]>([
    [
      'of an older format',
      ({ projects }) => ({ format: 'gablewatt-fleet-baseline/1', projects }),
      /its format is 'gablewatt-fleet-baseline\/1', this program reads 'gablewatt-fleet-baseline\/3'; write it anew with/u,
    ],
    [
      'with another figure',
      (one) => ({ ...one, projects: { h: { project: { status: 'failed' }, wire: { breaker_a: 100 } } } }),
      /its seal does not fit/u,
    ],
    ['without a project', (one) => ({ ...one, projects: {} }), /its seal does not fit/u],
    [
      'with a number for a project, and a new seal',
      (one) => resealed({ ...one, projects: { h: 3 } }),
      /a damaged baseline, at \/projects\/h\//u,
    ],
    [
      'with a list for a figure, and a new seal',
      (one) => resealed({ ...one, projects: { h: { project: { status: [] } } } }),
      /a damaged baseline, at \/projects\/h\/project\/status\//u,
    ],
    [
      'with figures of another form',
      (one) => resealed({ ...one, schema: '0123456789abcdef' }),
      /its figures have another form, as another build/u,
    ],
    [
      'with a figure beyond all',
      (one) => ({ ...one, projects: { h: { project: { status: 'ok' }, wire: { breaker_a: '@' } } } }),
      /JSON with a number beyond 1\.8e308/u,
    ],
    ['without a seal', ({ format, projects }) => ({ format, projects }), /a damaged baseline/u],
  ])('a baseline %s is refused, unless it is written anew', (_name, change, message) => {
    const whole = writeBaseline(new Map([['h', { project: { status: 'ok' }, wire: { breaker_a: 20 } }]]), TOOL)
    const path = put('changed.json', JSON.stringify(change(JSON.parse(whole) as never)).replace('"@"', '1e999'))
    expect(() => readBaseline(path)).toThrow(message)
    expect(() => readBaseline(path)).toThrow('--update-baseline')
    expect(readBaseline(path, true)).toBeUndefined()
  })
})

describe('JUnit', () => {
  test('problems are errors, failing checks and moves are failures, names are escaped', () => {
    const failing = outcomeOf(job(0, 'a<b>&"'), {
      status: 'failed',
      stages: { wire: {} },
      findings: [
        { stage: 'wire', severity: 'error', id: 'wire.x', where: 'p.yaml:1:2 (a)', message: 'too \u001B[31mthin' },
      ],
    })
    const bad = outcomeOf(job(1), {
      status: 'invalid',
      problems: [{ place: 't.csv:3:4', key: 'a.b', message: 'no number' }],
    })
    const moves = compareProject('gone', { project: { status: 'ok' } }, undefined, 0)
    const xml = junitXml([junitProject(failing), junitProject(bad)], moves)
    expect(xml).toContain('tests="4" failures="2" errors="1"')
    expect(xml).toContain('<testsuite name="a&lt;b&gt;&amp;&quot;" tests="2" failures="1" errors="0">')
    expect(xml).toContain('>t.csv:3:4: a.b: no number</error>')
    expect(xml).toContain('<testsuite name="gone" tests="1" failures="1"')
    expect(xml).not.toContain('\u001B')
  })
})

describe('progress', () => {
  test('says how far, how fast and how long, within the terminal', () => {
    const bar = progressBar({ done: 300, total: 1000, recalled: 100, seconds: 10 }, 80)
    expect(bar).toBe('[#########.....................]   300/1000   30 %  20.0/s  0:35 left')
    // 600 more at 1 in 10 s and at 1 in 20 s: an hour and forty minutes, twice that.
    const leftAfter = (seconds: number): string =>
      progressBar({ done: 100, total: 700, recalled: 0, seconds }, 80).split('  ').at(-1) ?? ''
    expect(leftAfter(1000)).toBe('1:40:00 left')
    expect(leftAfter(2000)).toBe('3:20:00 left')
    expect(leftAfter(1090)).toBe('1:49:00 left')
    for (const width of [10, 20, 40, 200])
      expect(progressBar({ done: 1, total: 9, recalled: 0, seconds: 0 }, width).length).toBeLessThan(width)
    expect(progressBar({ done: 0, total: 0, recalled: 0, seconds: 0 }, 80)).toContain('100 %')
  })
})
