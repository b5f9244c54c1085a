import { closeSync, mkdirSync, mkdtempSync, openSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { openTable as openWeather } from '../../src/climate/series/read-columns.js'
import { readEarlier } from '../../src/cli/earlier-result.js'
import { knownFile } from '../../src/cli/verify/known-file.js'
import { entriesUpTo } from '../../src/files/index.js'
import { fileJobs } from '../../src/fleet/file-jobs.js'
import { expandPattern } from '../../src/fleet/glob.js'
import { openJournal } from '../../src/fleet/journal.js'
import { LOOKED_AT } from '../../src/fleet/looked-at.js'
import { mergeParts } from '../../src/fleet/merge-parts.js'
import { readBaseline, writeBaseline } from '../../src/fleet/baseline.js'
import { readLines } from '../../src/fleet/read-lines.js'
import { tableJobs } from '../../src/fleet/table-jobs.js'
import { readProduction } from '../../src/fieldwork/production/read-production.js'
import { readBills } from '../../src/money/bill-check/read-bills.js'
import { readGreenButton, readIntervalCsv } from '../../src/money/usage/index.js'
import { readReadings, readSerials } from '../../src/papers/handover/read-tables.js'
import { readSvgShapes } from '../../src/papers/logo/svg-shapes.js'
import { readPriceTable } from '../../src/materials/price-list/read-price-table.js'
import { readRecord } from '../../src/packet/read-record.js'
import { readColumns, type IntervalCsv } from '../../src/project/index.js'
import { entriesOfTable } from '../../src/project/equipment/entries-of-table.js'
import * as budgets from '../../src/project/budgets.js'
import {
  beyondXml,
  LONGEST_TAG,
  LONGEST_TEXT,
  MOST_BAD_ROWS,
  MOST_HEAD_LINES,
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

  test('a cell in quotes ends at its bound', () => {
    const cell = (length: number): string => `a,b\n"${'x'.repeat(length)}",1\n`
    expect(problems(cell(100_000), 7)).toEqual([])
    expect(problems(cell(100_001), 7)).toEqual(['2:1 a cell of more than 100000 characters; is its quote closed?'])
  })

  test('a header is looked for among the first ten thousand lines, unless its line is stated', () => {
    for (const line of ['\n', 'x\n', '\r\n']) {
      expect(readTable(`${line.repeat(MOST_HEAD_LINES - 1)}a,b\n1,2\n`, 7)?.rows, line).toHaveLength(1)
      expect(readTable(`${line.repeat(MOST_HEAD_LINES)}a,b\n1,2\n`, 7), line).toBeUndefined()
      expect(readTable(`${line.repeat(MOST_HEAD_LINES)}a,b\n1,2\n`, 7, ',', 10_001)?.rows, line).toHaveLength(1)
    }
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
  const sheetColumns = readColumns(
    'c.yaml',
    'format: gablewatt-equipment-columns/1\nkind: module\nid_column: t\ncolumns:\n  pmax_w: { column: k }\n',
  )
  /** What is thrown or given back, all of it. */
  const told = (work: () => unknown): string => {
    try {
      return JSON.stringify(work())
    } catch (error) {
      return JSON.stringify((error as { problems?: unknown }).problems)
    }
  }
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
    [
      'sheets',
      budgets.MOST_SHEET_ROWS,
      (text: string) => told(() => entriesOfTable('s.csv', text, sheetColumns).problems),
    ],
    [
      'serial numbers',
      budgets.MOST_LIST_ROWS,
      (text: string) => told(() => readSerials({ name: 's.csv', text }, { module: [], inverter: [] })),
    ],
    [
      'readings of strings',
      budgets.MOST_LIST_ROWS,
      (text: string) => told(() => readReadings({ name: 'r.csv', text }, [])),
    ],
    ['prices', budgets.MOST_LIST_ROWS, (text: string) => told(() => readPriceTable('p.csv', text))],
  ] as const)('%s', { timeout: 120_000 }, (_kind, most, said) => {
    const rows = (count: number): string => `t,k\n${',\n'.repeat(count)}`
    expect(said(rows(most))).not.toMatch(/more than/u)
    expect(said(rows(most + 1))).toMatch(BEYOND(most))
  })

  test('a table of prices is read up to its last row', () => {
    const prices = (count: number): string =>
      `id,pack,usd\n${Array.from({ length: count }, (_, at) => `i${at},each,1\n`).join('')}`
    expect(Object.keys(readPriceTable('p.csv', prices(budgets.MOST_LIST_ROWS)).items)).toHaveLength(20_000)
    expect(told(() => readPriceTable('p.csv', prices(budgets.MOST_LIST_ROWS + 1)))).toMatch(BEYOND(20_000))
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
    expect(thrown(() => readBaseline(path))).toMatch(/b\.json: more than 15000000 brackets, commas and colons; /u)
  })

  test('a baseline that could not be read again is not written', () => {
    const houses = (count: number): Map<string, Record<string, Record<string, number | string>>> =>
      new Map(
        Array.from({ length: count }, (_, at) => [
          `h${at}`,
          { project: { status: 'ok' }, yield: { 'annual.ac_kwh': 1000 + at } },
        ]),
      )
    const text = writeBaseline(houses(50), 'gablewatt 0.0.0')
    const [bytes, enough] = [Buffer.byteLength(text), 1e9]
    const marks = text.replaceAll(/"[^"]*"/gu, '').replaceAll(/[^[{,:]/gu, '').length
    const said = (bounds: { bytes: number; marks: number }): string =>
      thrown(() => writeBaseline(houses(50), 'gablewatt 0.0.0', bounds))
    expect(said({ bytes, marks })).toBe('')
    expect(said({ bytes: bytes - 1, marks: enough })).toMatch(
      /^no baseline is written: 50 houses have more than 0 MB of figures, and at most [\d.]+ MB are read again; run the fleet in parts with --shard/u,
    )
    // Seen before the text is made.
    expect(said({ bytes: 100, marks: enough })).toContain('no baseline is written')
    expect(said({ bytes: enough, marks: marks - 1 })).toContain(
      `it would have more than ${marks - 1} brackets, commas and colons, which are not read again; run the fleet in parts`,
    )
    const path = saved('again.json', text)
    expect(readBaseline(path)?.projects.size).toBe(50)
  })

  test('in folders and patterns: at the bounds and one above', () => {
    const place = join(folder, 'counted')
    mkdirSync(join(place, 'below'), { recursive: true })
    // Four entries with the folder, of which two are projects, and one more below.
    for (const name of ['a.yaml', 'b.yaml', 'below/c.yaml']) writeFileSync(join(place, name), 'format: gablewatt/2\n')
    writeFileSync(join(place, 'notes.txt'), '')
    const jobs = (named: string, houses: number, entries: number): string =>
      thrown(() => fileJobs([named], [], { houses, entries }))
    expect(jobs(place, 3, 5)).toBe('')
    expect(jobs(place, 2, 5)).toBe(`${place}: 3 projects; at most 2 are run at once: name fewer folders`)
    expect(jobs(place, 3, 4)).toBe(`${place}: more than 4 files lie below it; name the folder of the projects`)
    // The first folder alone is beyond.
    expect(jobs(place, 3, 3)).toContain('more than 3 files lie below it')
    const pattern = `${place}/**/*.yaml`
    // The folders above are looked at too where the pattern does not begin with them as they are.
    const found = (houses: number, entries: number): string =>
      thrown(() => expandPattern('**/*.yaml'.replace('**', `${place}/**`), { houses, entries }))
    const enough = 100_000
    expect(found(3, enough)).toBe('')
    expect(found(2, enough)).toContain('more than 2 files match it; name fewer')
    const least = Array.from({ length: enough }, (_, at) => at).find((entries) => found(3, entries) === '')!
    expect(jobs(pattern, 3, least)).toBe('')
    expect(jobs(pattern, 3, least - 1)).toContain(`it looks at more than ${least - 1} files; begin it with a folder`)
    expect(LOOKED_AT).toEqual({ houses: budgets.MOST_HOUSES, entries: budgets.MOST_ENTRIES })
  })

  test('a folder is not listed beyond its bound', () => {
    const place = join(folder, 'wide')
    mkdirSync(place)
    for (let at = 0; at < 2000; at += 1) writeFileSync(join(place, `f${at}`), '')
    expect(entriesUpTo(place, 2000)).toHaveLength(2000)
    expect(entriesUpTo(place, 1999)).toHaveLength(2000)
    expect(entriesUpTo(place, 5)).toHaveLength(6)
    expect(
      entriesUpTo(place, 5000)
        .map(({ name }) => name)
        .toSorted(),
    ).toEqual(Array.from({ length: 2000 }, (_, at) => `f${at}`).toSorted())
    expect(thrown(() => entriesUpTo(join(place, 'none'), 5))).toContain('ENOENT')
  })

  test('in a folder: what is beside the projects is looked past', () => {
    mkdirSync(join(folder, 'houses/below'), { recursive: true })
    writeFileSync(join(folder, 'houses/a.yaml'), 'format: gablewatt/2\n')
    writeFileSync(join(folder, 'houses/below/b.yaml'), 'format: gablewatt/2\n')
    writeFileSync(join(folder, 'houses/notes.txt'), '')
    expect(fileJobs([join(folder, 'houses')], []).map(({ name }) => name)).toEqual(['a', 'below/b'])
  })
})

describe('marks of JSON: at the bound and one above', () => {
  /** So many brackets, commas and colons. */
  const marks = (count: number): string => `{"a":[${'1,'.repeat(count - 3)}1]}`
  test.each([
    ['a result of --use', budgets.MOST_RESULT_MARKS, (path: string) => readEarlier(path, 'p.yaml')],
    ['the record of a packet', budgets.MOST_RESULT_MARKS, readRecord],
    ['a baseline', budgets.MOST_BASELINE_MARKS, (path: string) => readBaseline(path)],
  ] as const)('%s', { timeout: 60_000 }, (_kind, most, read) => {
    const said = (count: number): string => thrown(() => read(saved('m.json', marks(count))))
    expect(said(most)).toMatch(/no (?:result|baseline|'gablewatt-packet)/u)
    expect(said(most + 1)).toMatch(new RegExp(`(?:has|:) more than ${most} brackets, commas and colons; `, 'u'))
  })

  test('a result that is nested deeper says so', () => {
    const path = saved('d.json', '['.repeat(101) + ']'.repeat(101))
    expect(thrown(() => readEarlier(path, 'p.yaml'))).toContain('the file is nested more than 100 levels deep; ')
    expect(thrown(() => readRecord(path))).toContain('d.json is nested more than 100 levels deep; ')
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
    expect(thrown(() => knownFile(Buffer.from(sealed + sealed + '\n'.repeat(budgets.MOST_HOUSES - 2))))).toBe(
      'more than 500000 lines',
    )
  })

  test('a line beyond the length of any is a broken one', () => {
    const long = `{"format":"gablewatt-fleet/2","seal":"","a":"${'x'.repeat(budgets.LONGEST_HOUSE_LINE)}"}`
    expect(knownFile(Buffer.from(`${sealed}${long}\n${sealed}`))).toMatchObject({ broken: [2], parts: { length: 2 } })
  })
})
