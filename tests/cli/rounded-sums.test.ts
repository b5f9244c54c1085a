import { describe, expect, test } from 'vitest'
import { withRoundedSums } from '../../src/cli/output/rounded-sums.js'
import { wrapText } from '../../src/cli/output/wrap.js'
import { cellValue, type Cell } from '../../src/report/index.js'

function column(values: readonly Cell[], total: Cell, decimals = 0): (string | number | null)[] {
  const columns = [{ heading: 'A' }, { heading: 'B', decimals }]
  const { rows } = withRoundedSums({ columns, rows: values.map((value) => ['', value]), total: ['Sum', total] })
  return rows.map((row) => cellValue(row[1] ?? null))
}

describe('rows that are printed add up to the sum below them', () => {
  // Worked by hand: rests .4 .4 .4 of a sum of 10.2, rounded 10; the first of equal rests goes up.
  test('by the largest remainder', () => {
    expect(column([3.4, 3.4, 3.4], 10.2)).toEqual([4, 3, 3])
    expect(column([2.6, 2.6, 2.6], 7.8)).toEqual([3, 3, 2])
    expect(column([-1.4, 3.9, 0.3], 2.8)).toEqual([-1, 4, 0])
    expect(column([0.14, 0.14, 0.14], 0.42, 1).map((value) => Number(value).toFixed(1))).toEqual(['0.2', '0.1', '0.1'])
  })

  /**
   * The quota rule of the method: each part gets its share rounded down or up, and the parts make the whole (Balinski &
   * Young, Fair Representation; from memory).
   */
  test('each stays within one unit, and the sum is met, for seeded figures', () => {
    let state = 7
    const next = () => (state = (state * 16_807) % 2_147_483_647) / 2_147_483_647
    for (let run = 0; run < 200; run++) {
      const values = Array.from({ length: 12 }, () => next() * 1500 - 100)
      const sum = values.reduce((before, value) => before + value, 0)
      const shown = column(values, sum) as number[]
      expect(shown.reduce((before, value) => before + value, 0)).toBe(Math.round(sum))
      shown.forEach((value, i) => expect(Math.abs(value - (values[i] ?? 0))).toBeLessThan(1))
    }
  })

  test('exact figures, and columns whose last row is no sum, stay as they are', () => {
    expect(column([133.89, 116.2, 0.01], 250.1, 2).map((value) => Number(value).toFixed(2))).toEqual([
      '133.89',
      '116.20',
      '0.01',
    ])
    expect(column([1.6, 2.6], 2.1)).toEqual([1.6, 2.6])
    expect(column([1.6, null], 1.6)).toEqual([1.6, null])
    expect(column(['a', 1], 1)).toEqual(['a', 1])
  })

  test('tones stay', () => {
    const columns = [{ heading: 'A' }]
    const { rows } = withRoundedSums({ columns, rows: [[{ value: 1.4, tone: 'bad' }], [1.4]], total: [2.8] })
    expect(rows).toEqual([[{ value: 2, tone: 'bad' }], [1]])
  })
})

test('a long name is broken at its points', () => {
  expect(wrapText('south.lower.row1.lower.m7', 19)).toEqual(['south.lower.row1.', 'lower.m7'])
  expect(wrapText('a.bcdefghijklmnop', 8)).toEqual(['a.bcdefg', 'hijklmno', 'p'])
})
