import { describe, expect, it } from 'vitest'
import { SpanColumns } from '../../src/fieldwork/production/span-list.js'

/** Invented spans of an hour with two modules; the second lacks a reading in every third. */
function spans(): SpanColumns {
  const columns = new SpanColumns(6, 2)
  for (let at = 0; at < 6; at += 1) {
    columns.push(at * 10, at * 10 + 10, at / 2, at + 2)
    columns.setModule(0, at)
    columns.setModule(1, at % 3 === 0 ? Number.NaN : 10 * at)
  }
  return columns
}

describe('spans as columns', () => {
  it('are what an array of them would be', () => {
    const columns = spans()
    expect(columns.at(4)).toEqual({ startMs: 40, endMs: 50, kwh: 2, moduleKwh: [4, 40], line: 6 })
    expect(columns.at(-3)).toEqual({ startMs: 30, endMs: 40, kwh: 1.5, moduleKwh: [3, undefined], line: 5 })
    expect([columns.at(6), columns.at(-7)]).toEqual([undefined, undefined])
    expect([...columns].map(({ line }) => line)).toEqual(columns.map(({ line }) => line))
    expect(columns.length).toBe(6)
  })
  it('keep all that belongs to a span when others are left out', () => {
    const columns = spans()
    columns.keep(({ line }) => line % 2 === 1)
    expect([...columns]).toEqual([
      { startMs: 10, endMs: 20, kwh: 0.5, moduleKwh: [1, 10], line: 3 },
      { startMs: 30, endMs: 40, kwh: 1.5, moduleKwh: [3, undefined], line: 5 },
      { startMs: 50, endMs: 60, kwh: 2.5, moduleKwh: [5, 50], line: 7 },
    ])
  })
})
