import { describe, expect, test } from 'vitest'
import { flowBlocks, label, type Block } from '../../src/drawings/layout/index.js'
import type { Primitive } from '../../src/drawings/model/index.js'
import { placeSections } from '../../src/drawings/sheets/one-line-sections.js'
import { packetInput } from './demo-packet.js'
import { DRAWN_HOUSES } from './drawn-houses.js'
import { readPacket, type ReadSheet } from './read-sheet.js'

/** What the specification of this project asks of full sheets; no source outside of it. */

const box = (height: number, y = 0) => ({ x: 0, y, width: 400, height })
const wordsOf = (page: readonly Primitive[]): string[] =>
  page.flatMap((each) => (each.kind === 'text' ? each.text.split('\n') : []))
const figure = (name: string, heightPt: number): Block => ({
  kind: 'figure',
  heightPt,
  draw: (x, y) => [label(x, y, name)],
})
const table = (rows: number): Block => ({
  kind: 'table',
  columns: [{ heading: 'Head', share: 1 }],
  rows: Array.from({ length: rows }, (_, index) => [`row ${index + 1}`]),
})

describe('parts that flow over sheets', () => {
  test('fill what is left of each sheet in turn, and pass by what is too low', () => {
    const pages = flowBlocks([figure('a', 80), figure('b', 80), figure('c', 80)], box(100, 400), 1, [
      box(60, 440),
      box(500),
    ])
    expect(pages.map(wordsOf)).toEqual([['a'], [], ['b', 'c']])
  })

  test('never leave the head of a table over a single row of several', () => {
    const [, ...rows] = Array.from({ length: 40 }, (_, extra) => {
      const [first = []] = flowBlocks([figure('above', 100 + extra), table(30)], box(250))
      return wordsOf(first).filter((word) => word.startsWith('row')).length
    })
    expect(rows).not.toContain(1)
    expect(Math.max(...rows)).toBeGreaterThan(4)
  })

  test('save a last sheet that would hold hardly anything by tighter rows, and only then', () => {
    const pagesOf = (rows: number) => flowBlocks([table(rows)], box(500))
    const full = Array.from({ length: 60 }, (_, index) => index + 10).findLast((rows) => pagesOf(rows).length === 1)
    if (full === undefined) throw new Error('no table is one sheet')
    const gapOf = (page: readonly Primitive[] = []): number => {
      const [a, b] = page.flatMap((each) => (each.kind === 'rectangle' ? [each.height] : []))
      return Math.min(a ?? 0, b ?? 0)
    }
    // A row is 3 pt above and below its words, in a tight table 2 pt.
    const [usual, tight] = [gapOf(pagesOf(10)[0]), gapOf(pagesOf(full)[0])]
    expect(usual - tight).toBeCloseTo(2, 6)
    expect(Math.ceil(500 / usual)).toBeLessThan(full + 1)
    expect(gapOf(pagesOf(full + 20)[0])).toBeCloseTo(usual, 6)
  })
})

describe('what stands below the one-line diagram', () => {
  const sections = {
    legend: [figure('legend', 150)],
    conductors: [figure('conductors', 300)],
    ratings: [figure('ratings', 100)],
  }
  const placed = (rooms: readonly number[]) => {
    const { below, more, left } = placeSections(
      sections,
      rooms.map((height) => box(height, 500 - height)),
      box(500),
    )
    return [below.map(wordsOf), more.map(wordsOf), left.length]
  }

  test('keeps its order where that needs no further sheet', () => {
    expect(placed([160, 430])).toEqual([[['legend'], ['conductors', 'ratings']], [], 0])
  })
  test('puts the ratings under a diagram where the symbols have no room', () => {
    expect(placed([120])).toEqual([[['ratings']], [['legend', 'conductors']], 0])
  })
  test('leaves the ratings to the schedules where they would need a sheet', () => {
    expect(placed([20])).toEqual([[[]], [['legend', 'conductors']], 1])
  })
  test('goes on below the last rows of the diagram', () => {
    expect(placed([20, 330])).toEqual([[[], ['legend']], [['conductors', 'ratings']], 0])
    // What has no room there goes to the next sheet, however low the second diagram leaves its own.
    expect(placed([140, 90])).toEqual([[['ratings'], []], [['legend', 'conductors']], 0])
  })
})

const names = ['demo house', 'four planes 31', 'sixty in an L 21', 'strings on a combiner', 'strings']
const houses = DRAWN_HOUSES.filter(([name]) => names.includes(name))

describe.each(houses)('sheets of %s', (_, make) => {
  test.each(['11x17', 'letter', 'A3'] as const)('on %s have no part that is torn or alone', (size) => {
    const sheets = readPacket({ ...packetInput(make(), size, true), threeLine: true })
    const of = (prefix: string): ReadSheet[] => sheets.filter(({ sheet }) => sheet.id.startsWith(prefix))
    const holding = (words: string): string[] =>
      sheets.filter((each) => each.said.some(({ text }) => text === words)).map(({ sheet }) => sheet.id)
    // The symbols and what holds for them.
    const [symbols, ...again] = holding('Symbols')
    expect(again).toEqual([])
    expect(holding('Lines that cross without a dot do not join.')).toEqual([symbols])
    // Ratings once, and not alone on a sheet of the diagram.
    const [ratings = '', ...twice] = holding('Ratings').filter((id) => /^E-60[12]/u.test(id))
    expect([ratings === '', twice]).toEqual([false, []])
    const headings = ['Symbols', 'Insulation', 'Circuits', 'Grounding and bonding', 'METER']
    expect(headings.some((each) => holding(each).includes(ratings))).toBe(true)
    const rows = of('E-60').flatMap(({ sheet, said }) =>
      said.filter(({ text }) => text === 'Invented flashed foot').map(() => sheet.id),
    )
    expect(rows).toEqual([ratings])
    expect(of('E-602').at(-1)?.words).toContain(
      ratings.startsWith('E-601')
        ? 'by tag, and ratings of the equipment: sheet E-601'
        : 'Conductors by tag: sheet E-601',
    )
    // More than a single line or row on the last sheet of a series.
    for (const prefix of ['S-601', 'E-602', 'E-603', 'E-604']) {
      const last = of(prefix).at(-1)
      expect([prefix, (last?.said.filter(({ at }) => at.x < (last.sheet.body?.width ?? 0)).length ?? 0) > 14]).toEqual([
        prefix,
        true,
      ])
    }
  })
})
