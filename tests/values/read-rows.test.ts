import * as fc from '../fast-check.js'
import { describe, expect, test } from 'vitest'
import { readRows, readTable, type TableRow } from '../../src/values/index.js'

const texts = (record: TableRow): string[] => [...record.texts]
const read = (text: string, size = text.length): TableRow[] => {
  const chunks: string[] = []
  for (let at = 0; at < text.length; at += Math.max(1, size)) chunks.push(text.slice(at, at + Math.max(1, size)))
  return [...readRows(chunks)]
}

describe('RFC 4180, section 2', () => {
  test.each([
    [
      'rule 1: CRLF after every record',
      'aaa,bbb\r\nzzz,yyy\r\n',
      [
        ['aaa', 'bbb'],
        ['zzz', 'yyy'],
      ],
    ],
    [
      'rule 2: the last line break may be missing',
      'aaa,bbb\r\nzzz,yyy',
      [
        ['aaa', 'bbb'],
        ['zzz', 'yyy'],
      ],
    ],
    ['rule 4: spaces are part of a field', ' a , b', [[' a ', ' b']]],
    [
      'rule 5: quotes round a field',
      '"aaa","bbb"\r\nzzz,yyy',
      [
        ['aaa', 'bbb'],
        ['zzz', 'yyy'],
      ],
    ],
    [
      'rule 6: line break and comma in quotes',
      '"aaa","b\r\nb,b"\r\nzzz,yyy',
      [
        ['aaa', 'b\r\nb,b'],
        ['zzz', 'yyy'],
      ],
    ],
    ['rule 7: a quote is doubled', '"a""b",c', [['a"b', 'c']]],
    ['empty fields', ',"",\n', [['', '', '']]],
    [
      'LF, a byte order mark, empty lines',
      '\uFEFFa,b\n\n1,2\n\r\n',
      [
        ['a', 'b'],
        ['1', '2'],
      ],
    ],
  ])('%s', (_name, text, expected) => {
    expect(read(text).map(texts)).toEqual(expected)
    expect(read(text).every(({ problem }) => problem === undefined)).toBe(true)
  })

  test('whatever is written in quotes comes back, however it is cut', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', '"', ',', '\r', '\n', ' ', 'é', '\u{1F600}'), maxLength: 6 })
    const row = fc.array(cell, { minLength: 2, maxLength: 4 })
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 4 }), fc.integer({ min: 1, max: 5 }), (rows, size) => {
        const text = rows.map((cells) => cells.map((one) => `"${one.replaceAll('"', '""')}"`).join(',')).join('\r\n')
        const characters = Array.from(text)
        const starts = [...characters.keys()].filter((i) => i % size === 0)
        const pieces = starts.map((start) => characters.slice(start, start + size).join(''))
        expect([...readRows(pieces)].map(texts)).toEqual(rows)
      }),
      { numRuns: 200 },
    )
  })
})

describe('places', () => {
  test('line and column of every field, across quoted line breaks', () => {
    const places = read('id,a\n"x\ny",22\nzz,"3"\n').map((row) => [
      row.line,
      ...row.cells().map((cell) => [cell.line, cell.column]),
    ])
    expect(places).toEqual([
      [1, [1, 1], [1, 4]],
      [2, [2, 1], [3, 4]],
      [4, [4, 1], [4, 4]],
    ])
  })

  test.each([
    ['a,b"c\n', 1, 4, 'a quote in a cell'],
    ['a,"b"c\n', 1, 6, 'text follows a closing quote'],
    ['a,b\nc,"never\nclosed', 2, 3, 'never closed'],
    ['a,b\rc,d\n', 1, 4, 'carriage return'],
    ['a,"b\rc",d\re\n', 1, 10, 'carriage return'],
    [
      'a,b\n1,"2\n3,"4"\n',
      3,
      4,
      'text follows a closing quote; inside quotes a quote is written twice; the cell begins on line 2',
    ],
    [`a,b\n${'1,'.repeat(2000)}2\n`, 2, 1, 'the row has 2001 cells; at most 2000 are read'],
    [`a,b\n${'1'.repeat(150_001)}\n`, 2, 1, 'a line of more than 150000 characters'],
  ])('%j is wrong at %i:%i', (text, line, column, message) => {
    const problem = read(text).find((record) => record.problem !== undefined)?.problem
    expect(problem).toMatchObject({ line, column })
    expect(problem?.message).toContain(message)
  })

  test('reading goes on after a bad row', () => {
    expect(read('a,b\n1,x"y\n2,z\n').map(({ problem, texts: cells }) => [problem === undefined, cells[0]])).toEqual([
      [true, 'a'],
      [false, '1'],
      [true, '2'],
    ])
  })

  test('a quote that is never closed does not swallow a long file', () => {
    let taken = 0
    function* endless(): Generator<string> {
      yield 'a,b\n1,"'
      for (; taken < 10_000; taken += 1) yield 'x'.repeat(1000)
    }
    const records = [...readRows(endless())]
    expect(taken).toBeLessThan(200)
    expect(records.map(({ problem }) => problem?.line)).toEqual([undefined, 2])
  })
})

describe('a table of measurements', () => {
  const table = (text: string, delimiter?: string, headerLine?: number) => {
    const found = readTable(text, 1_000_000, delimiter, headerLine)
    return { ...found, problems: found?.problems.map(({ line, column, message }) => `${line}:${column} ${message}`) }
  }

  test.each([',', ';', '\t', '|'])('finds %j between the columns, also beside one in quotes', (between) => {
    const text = ['"date, of the | day;\tnext"', 'kWh', 'note'].join(between)
    expect(table(`Invented logger\n\n${text}\n`).delimiter).toBe(between)
  })

  test('begins at the line that is stated, whatever stands above it', () => {
    const { header, rows } = table('a "stray quote\nmore, of it\ndate,kWh\n1,2\n', undefined, 3)
    expect(header?.map(({ text }) => text)).toEqual(['date', 'kWh'])
    expect(rows?.map(({ texts: cells }) => cells)).toEqual([['1', '2']])
    expect(readTable('a,b\n\nc,d\n', 1000, undefined, 2)).toBeUndefined()
  })

  test('blanks round cells and quotes, empty rows, empty cells at the end', () => {
    const { header, rows, problems } = table('date , "kWh",,\r\n 1 , "2" \r\n,,\r\n3,4,,,\r\n')
    expect(header?.map(({ text }) => text)).toEqual(['date', 'kWh'])
    expect(rows?.map(({ texts: cells }) => cells.slice(0, 2))).toEqual([
      ['1', '2'],
      ['3', '4'],
    ])
    expect(problems).toEqual([])
  })

  test('a row with more or fewer cells than the header', () => {
    expect(table('date,kWh\n1,20,5\n2\n3,4\n').problems).toEqual([
      "2:6 the row has 3 cells, the header 2; a cell that holds ',' stands in quotes",
      '3:1 the row has 1 cells, the header 2',
    ])
  })

  test('two stray quotes do not make one cell of the rows between them', () => {
    const text = 'date,kWh,note\n1,2,"stray\n2,3,\n3,4,\n4,5,again"\n5,6,\n'
    expect(table(text).problems).toEqual([
      '2:5 the cell in quotes that begins here holds whole rows; is its quote closed?',
    ])
    expect(table('date,kWh,note\n1,2,"two\nlines"\n').problems).toEqual([])
  })

  test('100,000 rows are read within seconds, also in quotes, with the places of their cells', () => {
    for (const row of ['2026-01-01 00:00,12.5,ok', '"2026-01-01 00:00","12.5","o""k"']) {
      const text = `time,kWh,state\n${`${row}\n`.repeat(100_000)}`
      // Of this process, not by the clock: other work may run beside it.
      const before = process.cpuUsage()
      const { rows } = table(text)
      expect(process.cpuUsage(before).user / 1e6).toBeLessThan(3)
      expect(rows).toHaveLength(100_000)
      expect(rows?.at(-1)?.cell(1)).toMatchObject({ text: '12.5', line: 100_001 })
    }
  })
})
