import { describe, expect, it } from 'vitest'
import { dailyExtraterrestrialWhM2, MEAN_DAY_OF_YEAR, monthlyExtraterrestrialWhM2Day } from '../../src/climate/index.js'

// Daily extraterrestrial irradiation, MJ/m2, by Duffie & Beckman eq. 1.10.3 with 1367 W/m2 on the mean days of Klein
// (the method of D&B Table 1.10.1; values computed independently from the equation, rounded to 0.01).
const TABLE: readonly (readonly [number, readonly number[]])[] = [
  [0, [36.23, 37.47, 37.9, 36.8, 34.79, 33.51, 33.94, 35.71, 37.24, 37.37, 36.38, 35.66]],
  [35, [18.27, 23.33, 29.62, 35.85, 39.97, 41.56, 40.68, 37.36, 31.81, 25.13, 19.43, 16.85]],
  [45, [12.13, 17.63, 25.05, 33.16, 39.19, 41.75, 40.43, 35.46, 27.95, 19.78, 13.4, 10.68]],
  [-35, [43.22, 38.86, 32.5, 24.85, 18.64, 15.81, 16.98, 21.96, 29.21, 36.52, 41.89, 44.19]],
]
const WH_PER_MJ = 1e6 / 3600

describe('daily extraterrestrial irradiation', () => {
  it.each(TABLE)('at latitude %d agrees with the table in every month', (latitudeDeg, expectedMJ) => {
    const values = monthlyExtraterrestrialWhM2Day(latitudeDeg, 1367)
    values.forEach((value, month) => {
      // Half of the last digit, and a hair for values that end in 5.
      expect(Math.abs(value / WH_PER_MJ - expectedMJ[month]!)).toBeLessThan(0.0051)
    })
  })

  it('gives 33.8 MJ/m2 at latitude 43 on 15 April (Duffie & Beckman, example 1.10.1)', () => {
    expect(dailyExtraterrestrialWhM2(43, 105, 1367) / WH_PER_MJ).toBeCloseTo(33.8, 1)
  })

  it('uses the mean days of Klein 1977 (Duffie & Beckman, Table 1.6.1)', () => {
    expect(MEAN_DAY_OF_YEAR).toEqual([17, 47, 75, 105, 135, 162, 198, 228, 258, 288, 318, 344])
  })

  it('is nothing in polar night and finite at the poles', () => {
    expect(dailyExtraterrestrialWhM2(75, 344)).toBe(0)
    expect(dailyExtraterrestrialWhM2(90, 172)).toBeGreaterThan(12_000)
    expect(dailyExtraterrestrialWhM2(90, 355)).toBe(0)
  })
})
