import { closeSync, mkdirSync, mkdtempSync, openSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { openTable as openWeather } from '../../src/climate/series/read-columns.js'
import { knownFile } from '../../src/cli/verify/known-file.js'
import { fileJobs } from '../../src/fleet/file-jobs.js'
import { openJournal } from '../../src/fleet/journal.js'
import { mergeParts } from '../../src/fleet/merge-parts.js'
import { readBaseline } from '../../src/fleet/baseline.js'
import { readLines } from '../../src/fleet/read-lines.js'
import { tableJobs } from '../../src/fleet/table-jobs.js'
import { readProduction } from '../../src/fieldwork/production/read-production.js'
import { readBills } from '../../src/money/bill-check/read-bills.js'
import { readGreenButton, readIntervalCsv } from '../../src/money/usage/index.js'
import { readSvgShapes } from '../../src/papers/logo/svg-shapes.js'
import type { IntervalCsv } from '../../src/project/index.js'
import * as budgets from '../../src/project/budgets.js'
import {
  beyondXml,
  LONGEST_TAG,
  LONGEST_TEXT,
  MOST_BAD_ROWS,
  MOST_WEATHER_ROWS,
  openTable,
  readTable,
} from '../../src/values/index.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-rows-'))
afterAll(() => rmSync(folder, { recursive: true }))

const saved = (name: string, text: string): string => {
  const path = join(folder, name)
  writeFileSync(path, text)
  return path
}
/** What is thrown, with all of its problems; '' when nothing is. */
function thrown(work: () => unknown): string {
  try {
    work()
    return ''
  } catch (error) {
    return (error as Error).message
  }
}

describe('a table', () => {
  const problems = (text: string, most: number): string[] =>
    readTable(text, most)!.problems.map(({ line, column, message }) => `${line}:${column} ${message}`)

  test('is read up to its rows, and says so at the first beyond', () => {
    const rows = (count: number): string => `a,b\n${'1,2\n'.repeat(count)}`
    expect(problems(rows(7), 7)).toEqual([])
    expect(readTable(rows(7), 7)!.rows).toHaveLength(7)
    expect(problems(rows(9), 7)).toEqual([
      '9:1 more than 7 rows; at most 7 are read: split the table, or take out what is not wanted',
    ])
    expect(readTable(rows(9), 7)!.rows).toHaveLength(7)
    // Rows of nothing count, as they cost; empty lines cost nothing.
    expect(problems(`a,b\n${',\n'.repeat(8)}`, 7)[0]).toContain('9:1 more than 7 rows')
    expect(problems(`a,b\n${'\n\r\n'.repeat(8)}1,2\n`, 1)).toEqual([])
  })

  test('counts rows that a quick reader takes', () => {
    const taken: number[] = []
    const told: string[] = []
    const table = openTable(`a,b\n${'1,2\n'.repeat(9)}`, 7)!
    const rows = table.rows(
      ({ line, message }) => told.push(`${line} ${message}`),
      (_, line) => taken.push(line) > 0,
    )
    expect([...rows]).toEqual([])
    expect(taken).toEqual([2, 3, 4, 5, 6, 7, 8])
    expect(told).toEqual([expect.stringContaining('9 more than 7 rows')])
  })

  test('is given up after ten thousand bad rows', () => {
    const bad = (count: number): string => `a,b\n${'1\n'.repeat(count)}1,2\n`
    expect(problems(bad(MOST_BAD_ROWS), 1e6)).toHaveLength(10_000)
    expect(readTable(bad(MOST_BAD_ROWS), 1e6)!.rows).toHaveLength(1)
    const beyond = problems(bad(MOST_BAD_ROWS + 5), 1e6)
    expect(beyond).toHaveLength(10_001)
    expect(beyond.at(-1)).toBe(
      '10002:1 more than 10000 rows are badly written, and nothing below is read; is it this table, and its delimiter?',
    )
    expect(readTable(bad(MOST_BAD_ROWS + 5), 1e6)!.rows).toHaveLength(0)
  })
})

describe('rows of each kind of file: at the bound and one above', () => {
  const BEYOND = (most: number): RegExp =>
    new RegExp(`more than ${most} rows; at most ${most} are read: split the table`, 'u')
  const mapping = {
    file: 'm.csv',
    header_line: 1,
    stamp_columns: ['t'] as string[],
    stamp_format: 'iso',
    stamps_mark: 'beginning',
    clock: 'standard',
    interval_min: 5,
    use_column: 'k',
    unit: 'kwh',
  } satisfies IntervalCsv
  const limits = {
    moduleIds: [],
    utcOffsetH: -6,
  } as never
  test.each([
    ['weather', MOST_WEATHER_ROWS, (text: string) => thrown(() => openWeather(text, ',', 1))],
    ['meter', budgets.MOST_READING_ROWS, (text: string) => thrown(() => readIntervalCsv(text, mapping, 0))],
    [
      'production',
      budgets.MOST_READING_ROWS,
      (text: string) =>
        (readProduction('p.csv', text, { unit: 'kwh' }, limits).problems ?? []).map(({ message }) => message).join(),
    ],
    [
      'bills',
      budgets.MOST_BILLS,
      (text: string) => thrown(() => readBills('b.csv', text, { periods: [], demand: [] })),
    ],
  ] as const)('%s', { timeout: 120_000 }, (_kind, most, said) => {
    const rows = (count: number): string => `t,k\n${',\n'.repeat(count)}`
    expect(said(rows(most))).not.toMatch(/more than/u)
    expect(said(rows(most + 1))).toMatch(BEYOND(most))
  })

  test('they hold what is promised: ten years of five minutes, a hundred thousand houses', () => {
    expect(budgets.MOST_READING_ROWS).toBeGreaterThan(10 * 366 * 288)
    expect(budgets.MOST_HOUSES).toBeGreaterThanOrEqual(100_000)
    expect(budgets.MOST_METER_ELEMENTS).toBeGreaterThan(5 * 5 * 366 * 96)
  })
})

describe('a fleet', () => {
  test('of a table', { timeout: 60_000 }, () => {
    const jobs = (count: number): string => {
      const table = saved('t.csv', `id\n${'x\n'.repeat(count)}`)
      return thrown(() => {
        for (const _ of tableJobs('t.yaml', table, []));
      })
    }
    expect(jobs(budgets.MOST_HOUSES)).toBe('')
    expect(jobs(budgets.MOST_HOUSES + 1)).toMatch(/t\.csv:500002:1: more than 500000 houses; .+: split the table$/u)
  })

  const linesIn = (text: string): string => {
    const path = saved('lines', text)
    const file = openSync(path, 'r')
    try {
      return thrown(() => {
        for (const _ of readLines(file, 'lines'));
      })
    } finally {
      closeSync(file)
    }
  }
  test('in lines', { timeout: 60_000 }, () => {
    expect(linesIn('\n'.repeat(budgets.MOST_HOUSES))).toBe('')
    expect(linesIn('\n'.repeat(budgets.MOST_HOUSES + 1))).toMatch(/^lines:500001: more than 500000 lines; .+--shard$/u)
    const long = 'x'.repeat(budgets.LONGEST_HOUSE_LINE)
    expect(linesIn(`{}\n${long}\n`)).toBe('')
    expect(linesIn(`{}\n${long}${'x'.repeat(70_000)}`)).toMatch(/^lines:2: a line of more than 1 MB; /u)
  })

  test('lines are found whole wherever they are cut, with their places', () => {
    const lines = Array.from({ length: 300 }, (_, at) => 'x'.repeat((at * 997) % 3000) + String(at))
    const file = openSync(saved('whole', `${lines.join('\n')}\ncut off`), 'r')
    const read = [...readLines(file, 'whole')]
    closeSync(file)
    expect(read.map(({ text }) => text)).toEqual(lines)
    let offset = 0
    for (const [at, line] of read.entries()) {
      expect(line).toMatchObject({ offset, length: lines[at]!.length })
      offset += lines[at]!.length + 1
    }
  })

  test(
    'in parts: a great many bad lines are counted, not kept; too many files are refused',
    { timeout: 60_000 },
    () => {
      const path = saved('bad.jsonl', 'x\n'.repeat(400_000))
      let more: readonly string[] = []
      try {
        mergeParts([path])
      } catch (error) {
        more = (error as { more?: readonly string[] }).more ?? []
      }
      expect(more).toHaveLength(21)
      expect(more.at(-1)).toBe('and 399979 more')
      const many = Array.from({ length: 1001 }, (_, at) => `part-${at}`)
      expect(thrown(() => mergeParts(many))).toBe('--merge: 1001 files; at most 1000 parts are put together')
      expect(thrown(() => mergeParts(many.slice(1)))).toContain('part-1')
    },
  )

  test('a journal is a regular file of at most 2000 MB', () => {
    const open = (path: string): string =>
      thrown(() => openJournal({ path, plan: 'p', tool: 'gablewatt 0.0.0', resume: true }).close())
    expect(open(join(folder, 'new.journal'))).toBe('')
    expect(open('/dev/null')).toBe(
      'cannot use the journal /dev/null: it is not a regular file; name another with --journal',
    )
  })

  test('a baseline of more marks says so', { timeout: 60_000 }, () => {
    const path = saved('b.json', `[${'1,'.repeat(budgets.MOST_BASELINE_MARKS)}1]`)
    expect(thrown(() => readBaseline(path))).toMatch(/b\.json: more than 20000000 brackets, commas and colons; /u)
  })

  test('in a folder: what is beside the projects is looked past', () => {
    mkdirSync(join(folder, 'houses/below'), { recursive: true })
    writeFileSync(join(folder, 'houses/a.yaml'), 'format: gablewatt/2\n')
    writeFileSync(join(folder, 'houses/below/b.yaml'), 'format: gablewatt/2\n')
    writeFileSync(join(folder, 'houses/notes.txt'), '')
    expect(fileJobs([join(folder, 'houses')], []).map(({ name }) => name)).toEqual(['a', 'below/b'])
  })
})

describe('XML', () => {
  const bounds = { elements: 5, attributes: 4, names: 3, depth: 3 }
  test.each([
    ['elements', `<a>${'<b/>'.repeat(4)}</a>`, `<a>${'<b/>'.repeat(5)}</a>`, 'more than 5 elements'],
    [
      'attributes',
      '<a b="1" c="2"><d e=\'3\' f="a=b>c"/></a>',
      '<a b="1" c="2"><d e="3" f="4" g="5"/></a>',
      'more than 4 attributes',
    ],
    ['names', '<a><b/><b x="1"/><c></c></a>', '<a><b/><c/><d/></a>', 'more than 3 names of elements'],
    [
      'depth',
      '<a><b><c></c></b><b><c></c></b></a>',
      '<a><b><b><b/></b></b></a>'.replace('<b/>', '<b></b>'),
      'nested more than 3 levels deep',
    ],
    [
      'text',
      `<a>${'x'.repeat(LONGEST_TEXT)}</a>`,
      `<a>${'x'.repeat(LONGEST_TEXT + 1)}</a>`,
      `a text of more than ${LONGEST_TEXT} characters`,
    ],
    [
      'a tag',
      `<a b="${'x'.repeat(LONGEST_TAG - 9)}"/>`,
      `<a b="${'x'.repeat(LONGEST_TAG)}"/>`,
      `a tag of more than ${LONGEST_TAG} characters`,
    ],
    [
      'a DOCTYPE',
      '<?xml version="1.0"?><!-- <!DOCTYPE a> <b><b><b><b> --><a><![CDATA[<b><b><b><b><b><b>]]></a>',
      '<!DOCTYPE a [<!ENTITY b "c">]><a/>',
      'a DOCTYPE',
    ],
  ])('%s at the bound and above it', (_name, fits, beyond, says) => {
    expect(beyondXml(fits, bounds)).toBeUndefined()
    expect(beyondXml(`\n${beyond}`, bounds)).toContain(`line 2, ${says}`)
  })

  test('what is cut off is left to its reader', () => {
    for (const text of ['<a', '<a b="', '<!-- x', '<![CDATA[', '<?', '</a', 'x', '', '<'])
      expect(beyondXml(text, bounds), text).toBeUndefined()
  })

  test('of a meter says what is too much', () => {
    const said = (inner: string): string => thrown(() => readGreenButton(`<feed>${inner}</feed>`))
    expect(said('<a/>'.repeat(budgets.MOST_METER_ELEMENTS))).toContain(
      'the file is no ESPI feed: line 1, more than 1200000 elements',
    )
    expect(said('<a b=""/>'.repeat(budgets.MOST_METER_ATTRIBUTES + 1))).toContain('more than 100000 attributes')
    expect(said('<a>'.repeat(budgets.DEEPEST_METER))).toContain('nested more than 40 levels deep')
    expect(said(Array.from({ length: budgets.MOST_METER_NAMES }, (_, at) => `<a${at}/>`).join(''))).toContain(
      'more than 1000 names of elements',
    )
  })
})

test('a logo whose shape is moved too often is refused', () => {
  const svg = (count: number): Uint8Array =>
    Buffer.from(
      `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><g transform="${'scale(1)'.repeat(count)}"><path d="M0 0L1 1"/></g></svg>`,
    )
  expect(readSvgShapes(svg(200))).toMatchObject({ shapes: [{ matrices: { length: 200 } }] })
  expect(readSvgShapes(svg(201))).toBe('a shape has more than 200 transforms')
})

describe('a file to verify', () => {
  const sealed = '{"format":"gablewatt-fleet/2","seal":""}\n'
  test('has at most as many lines as a fleet', { timeout: 60_000 }, () => {
    const fits = knownFile(Buffer.from(sealed + sealed + '\n'.repeat(budgets.MOST_HOUSES - 3)))
    expect(fits).toMatchObject({ kind: 'fleet', parts: { length: 2 } })
    expect(thrown(() => knownFile(Buffer.from(sealed + sealed + '\n'.repeat(budgets.MOST_HOUSES))))).toBe(
      'more than 500000 lines',
    )
  })

  test('a line beyond the length of any is a broken one', () => {
    const long = `{"format":"gablewatt-fleet/2","seal":"","a":"${'x'.repeat(budgets.LONGEST_HOUSE_LINE)}"}`
    expect(knownFile(Buffer.from(`${sealed}${long}\n${sealed}`))).toMatchObject({ broken: [2], parts: { length: 2 } })
  })
})
