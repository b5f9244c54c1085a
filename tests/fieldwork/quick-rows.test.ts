import { describe, expect, it } from 'vitest'
import { readProduction } from '../../src/fieldwork/production/index.js'
import { oddTable } from './odd-tables.js'

const limits = {
  moduleIds: ['east-1', 'east-2'],
  utcOffsetH: -7,
  mostKwh: (startMs: number, endMs: number) => (10 * (endMs - startMs)) / 3_600_000,
}

/** All that a reader says of a table, as text. */
function told({ text, mapping }: ReturnType<typeof oddTable>, isQuick: boolean): string {
  const { series, problems } = readProduction('p.csv', text, mapping, limits, isQuick)
  return JSON.stringify(problems ?? { ...series, spans: [...series.spans] })
}

describe('rows of the commonest form, read without a text for each cell', () => {
  it('come to the same readings and the same messages as the others, byte for byte', () => {
    let [whole, wrong] = [0, 0]
    for (let seed = 0; seed < 500; seed += 1) {
      const table = oddTable(seed)
      const slow = told(table, false)
      expect(told(table, true), `seed ${seed}:\n${table.text.slice(0, 400)}`).toBe(slow)
      if (slow.startsWith('[')) wrong += 1
      else whole += 1
    }
    // Of both there are enough that a difference would show.
    expect(whole).toBeGreaterThan(100)
    expect(wrong).toBeGreaterThan(100)
  })

  it.each([
    ['2026-05-01 12:00,1.5', 'plain'],
    ['2026-05-01T12:00:00,1.5\r', 'with seconds and a carriage return at the end'],
    ['2026-05-01 12:00:30,1.5', 'with seconds that count'],
    ['2026-05-01 12:00,0.9420905329549077', 'with more digits than a division takes'],
    ['2026-05-01 24:00,0.123456789012345', 'at the end of a day, with fifteen digits'],
    ['2026-05-01 12:00,', 'empty'],
    ['2026-05-01 12:00,-0.5', 'below nothing'],
  ])('take %j: %s', (row) => {
    const table = { text: `time,kWh\n2026-05-01 11:00,0.5\n${row}\n2026-05-01 13:00,0.5\n`, mapping: {} }
    expect(told(table, true)).toBe(told(table, false))
  })
  it('a stamp that is none is told once, and the other rows are read on', () => {
    const text = 'time,kWh\n2026-05-01 11:00,0.5\nyesterday,0.5\n2026-05-01 13:00,x\n2026-05-01 14:00,0.5\n'
    const { problems } = readProduction('p.csv', text, {}, limits)
    expect(problems?.map(({ line, column, message }) => [line, column, message.slice(0, 15)])).toEqual([
      [3, 1, "'yesterday' is "],
      [4, 18, "'x' is no numbe"],
    ])
  })
})
