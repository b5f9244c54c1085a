import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readGreenButton } from '../../src/money/index.js'
import { decodeTimeRule } from '../../src/money/usage/espi-time-rule.js'
import { LOAD_SHAPES, PRICE_INDEX } from '../../src/tables/money/index.js'

// Green Button SDK samples, GitHub MartyBurns/OpenESPI commit eb666d9 (Apache-2.0 notice inside the files).
const sample = (name: string): string => readFileSync(new URL(`fixtures/${name}`, import.meta.url), 'utf8')
const sumWh = (readings: readonly { importWh: number }[]): number =>
  readings.reduce((all, one) => all + one.importWh, 0)

describe('published ESPI sample files', () => {
  it('32 days of hours: the first 30 add up to the overall consumption that the file states', () => {
    const series = readGreenButton(sample('espi-hourly-32days.xml'))
    expect(series.readings.length).toBe(768)
    expect(sumWh(series.readings)).toBe(2_355_432)
    expect(sumWh(series.readings.slice(0, 720))).toBe(2_218_704)
    expect(series.readings[0]!.startS).toBe(Date.parse('2012-04-01T00:00:00-04:00') / 1000)
    expect(series.utcOffsetS).toBe(-18_000)
    expect(series.daylightSaving).toBe(true)
    expect(series.leftOut).toEqual([])
  })

  it('March 2011: one hour short for daylight saving, and the sum of the file', () => {
    const series = readGreenButton(sample('espi-hourly-march-dst.xml'))
    expect(series.readings.length).toBe(743)
    expect(sumWh(series.readings)).toBe(2_278_213)
    const from = Date.parse('2011-03-13T00:00:00-05:00') / 1000
    const to = Date.parse('2011-03-14T00:00:00-04:00') / 1000
    expect(series.readings.filter((one) => one.startS >= from && one.startS < to).length).toBe(23)
  })

  it('clock rules of the samples: 2nd Sunday of March and 1st Sunday of November, 02:00', () => {
    expect(decodeTimeRule('360E2000')).toEqual({
      month: 3,
      weekday: 7,
      day: 0,
      operator: 'nth',
      nth: 2,
      hour: 2,
      second: 0,
    })
    expect(decodeTimeRule('B40E2000')).toEqual({
      month: 11,
      weekday: 7,
      day: 0,
      operator: 'nth',
      nth: 1,
      hour: 2,
      second: 0,
    })
    expect(decodeTimeRule('FFFFFFFF')).toBeUndefined()
  })
})

describe('tables', () => {
  it('load shapes keep their normalisation: days x (5/7 weekday + 2/7 weekend) = 1', () => {
    const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
    for (const shape of Object.values(LOAD_SHAPES)) {
      expect(shape.rows.length).toBe(24)
      // Month shares are printed to five decimals.
      expect(Math.abs(shape.monthShares.reduce((a, b) => a + b, 0) - 1)).toBeLessThan(12 * 0.5e-5)
      for (const [m, count] of days.entries()) {
        const sum = (row: readonly number[] | undefined): number => (row ?? []).reduce((a, b) => a + b, 0) / 1e7
        const whole = count * ((5 / 7) * sum(shape.rows[m * 2]) + (2 / 7) * sum(shape.rows[m * 2 + 1]))
        // 24 numbers printed to 1e-7: at most 24 x 0.5e-7 x 31 days.
        expect(Math.abs(whole - 1)).toBeLessThan(24 * 0.5e-7 * 31)
      }
    }
  })

  it('the price index of every division and year equals the published row', () => {
    const [, head = '', ...rows] = sample('money/electricity-price-index.csv').trim().split('\n')
    const years = head.split(',').slice(1).map(Number)
    expect([years[0], years.at(-1)]).toEqual([2025, 2060])
    const published = Object.fromEntries(
      rows.map((row) => {
        const [division = '', ...values] = row.split(',')
        return [division, values.map(Number)]
      }),
    )
    expect(PRICE_INDEX).toEqual(published)
  })

  it('NIST 2025 price index: the US falls to 0.969 by 2050, -0.12 % a year', () => {
    const us = PRICE_INDEX['United States']
    expect(us.length).toBe(36)
    expect(us[25].toFixed(3)).toBe('0.969')
    expect(((us[25] ** (1 / 25) - 1) * 100).toFixed(2)).toBe('-0.12')
    expect(((PRICE_INDEX['New England'][25] ** (1 / 25) - 1) * 100).toFixed(2)).toBe('-0.49')
    expect(((PRICE_INDEX['Middle Atlantic'][25] ** (1 / 25) - 1) * 100).toFixed(2)).toBe('0.09')
  })
})
