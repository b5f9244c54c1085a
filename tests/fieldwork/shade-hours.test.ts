import { describe, expect, it } from 'vitest'
import type { LitReadings } from '../../src/fieldwork/review/hour-model.js'
import { shadeHours } from '../../src/fieldwork/review/signs/shade-hours.js'

const FIRST = 20_000

/** Invented hours of clear days: each gives what a clear sky would, less what `left` takes. @param clear Of an hour, of a most of 1 kW. */
function hoursOf(
  days: number,
  hours: readonly number[],
  left: (hour: number, day: number) => number,
  clear: (hour: number) => number = () => 0.8,
): LitReadings {
  const rows = Array.from({ length: days }, (_, day) => hours.map((hour) => ({ day, hour }))).flat()
  const column = (of: (row: { day: number; hour: number }) => number): Float64Array => Float64Array.from(rows, of)
  return {
    length: rows.length,
    day: Int32Array.from(rows, ({ day }) => FIRST + day),
    hours: column(() => 1),
    solarH: column(({ hour }) => hour + 0.5),
    kw: column(({ hour, day }) => clear(hour) * left(hour, day)),
    clearKw: column(({ hour }) => clear(hour)),
    peakKw: column(() => 1),
  }
}
const DAY = [8, 9, 10, 11, 12, 13, 14, 15]

describe('hours of the day in the shade', () => {
  it('are told from the first to the last of them, with the days and the energy', () => {
    const [sign, ...others] = shadeHours(hoursOf(60, DAY, (hour) => (hour < 10 ? 0.5 : 1)))
    expect(others).toEqual([])
    expect(sign).toMatchObject({ kind: 'shade', fromDay: FIRST, toDay: FIRST + 59, where: '8 to 10 h of solar time' })
    // Two hours of 0.8 kW, half of it gone, on 60 days.
    expect(sign?.lostKwh).toBeCloseTo(2 * 0.8 * 0.5 * 60, 6)
    expect(sign?.probability).toBe(0.95)
  })
  it('below four tenths are sure', () => {
    expect(shadeHours(hoursOf(60, DAY, (hour) => (hour < 10 ? 0.39 : 1)))[0]?.probability).toBe(0.99)
    expect(shadeHours(hoursOf(60, DAY, (hour) => (hour < 10 ? 0.41 : 1)))[0]?.probability).toBe(0.95)
  })
  it.each([
    [0.59, 1],
    [0.61, 0],
  ])('with %d of the others left are %d sign', (left, signs) => {
    expect(shadeHours(hoursOf(60, DAY, (hour) => (hour < 10 ? left : 1)))).toHaveLength(signs)
  })
  it.each([
    [0.29, 0],
    [0.31, 1],
  ])('count from three tenths of the most of the day on: with a clear sky at %d there is %d sign', (low, signs) => {
    const clear = (hour: number): number => (hour < 10 ? low : 0.8)
    expect(shadeHours(hoursOf(60, DAY, (hour) => (hour < 10 ? 0.3 : 1), clear))).toHaveLength(signs)
  })
  it.each([
    [4, 0],
    [5, 1],
    [18, 1],
    [19, 0],
  ])('are looked at from 5 to 19 h: shade at %d h is %d sign', (shaded, signs) => {
    expect(shadeHours(hoursOf(60, [...DAY, shaded], (hour) => (hour === shaded ? 0.3 : 1)))).toHaveLength(signs)
  })
  it('want two stretches of thirty days in a row; days beyond whole stretches are not looked at', () => {
    const shaded = (from: number, end: number) => (hour: number, day: number) =>
      hour < 10 && day >= from && day < end ? 0.3 : 1
    expect(shadeHours(hoursOf(59, DAY, shaded(0, 59)))).toEqual([])
    expect(shadeHours(hoursOf(90, DAY, shaded(30, 60)))).toEqual([])
    expect(shadeHours(hoursOf(89, DAY, shaded(30, 89)))).toEqual([])
    expect(shadeHours(hoursOf(119, DAY, shaded(0, 60)))[0]).toMatchObject({ fromDay: FIRST, toDay: FIRST + 59 })
    expect(shadeHours(hoursOf(90, DAY, shaded(30, 90)))[0]).toMatchObject({ fromDay: FIRST + 30, toDay: FIRST + 89 })
  })
  it('of clouds are no shade: a tenth of the readings that is clear shows it', () => {
    const cloudy = (hour: number, day: number): number => (hour < 10 && day % 8 !== 0 ? 0.3 : 1)
    expect(shadeHours(hoursOf(60, DAY, cloudy))).toEqual([])
  })
})
