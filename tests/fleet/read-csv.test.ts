import * as fc from '../fast-check.js'
import { describe, expect, test } from 'vitest'
import { readCsv, type CsvRecord } from '../../src/fleet/index.js'

const texts = (record: CsvRecord): string[] => record.fields.map(({ text }) => text)
const read = (text: string, size = text.length): CsvRecord[] => {
  const chunks: string[] = []
  for (let at = 0; at < text.length; at += Math.max(1, size)) chunks.push(text.slice(at, at + Math.max(1, size)))
  return [...readCsv(chunks)]
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
        expect([...readCsv(pieces)].map(texts)).toEqual(rows)
      }),
      { numRuns: 200 },
    )
  })
})

describe('places', () => {
  test('line and column of every field, across quoted line breaks', () => {
    const places = read('id,a\n"x\ny",22\nzz,"3"\n').map(({ line, fields }) => [
      line,
      ...fields.map((f) => [f.line, f.column]),
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
  ])('%j is wrong at %i:%i', (text, line, column, message) => {
    const problem = read(text).find((record) => record.problem !== undefined)?.problem
    expect(problem).toMatchObject({ line, column })
    expect(problem?.message).toContain(message)
  })

  test('reading goes on after a bad row', () => {
    expect(read('a,b\n1,x"y\n2,z\n').map(({ problem, fields }) => [problem === undefined, fields[0]?.text])).toEqual([
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
    const records = [...readCsv(endless())]
    expect(taken).toBeLessThan(200)
    expect(records.length).toBe(1)
  })
})
