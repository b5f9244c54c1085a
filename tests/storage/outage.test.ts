import { expect, test } from 'vitest'
import { LONGEST_OUTAGE_H, outageHours, type Battery } from '../../src/storage/index.js'

// S5 and S6 were solved by hand outside the project.

const battery = (stated: Partial<Battery>): Battery => ({
  mostKwh: 10,
  leastKwh: 0,
  chargeSunKw: 5,
  chargeGridKw: 5,
  dischargeKw: 5,
  storedOfSun: 1,
  storedOfGrid: 1,
  givenOfStored: 1,
  standbyKw: 0,
  ...stated,
})
const flat = (kw: number): Float64Array => new Float64Array(24).fill(kw)
/** Stored at the end of each hour of a day, so that every outage begins with the same. */
const always = (kwh: number): Float64Array => new Float64Array(24).fill(kwh)

test('S5: 10 kWh, 0.94 out, 0.8 kW and no sun: 11.75 h', () => {
  const lasts = outageHours(
    { kwhOfHour: flat(0.8), pvKwh: undefined },
    battery({ givenOfStored: 0.94 }),
    always(10),
    10,
  )
  expect(lasts[0]).toBeCloseTo(11.75, 9)
})

test('standby counts in an outage, and the reserve is released', () => {
  const unit = battery({ leastKwh: 8, standbyKw: 0.2 })
  const lasts = outageHours({ kwhOfHour: flat(0.8), pvKwh: undefined }, unit, always(8), 8)
  expect(lasts[3]).toBeCloseTo(8, 9)
})

test('S6: 4 kWh at 18:00, 0.5 kW, sun of 1.5 kW from 8 to 16: dies at 2:00; with 8 kWh it lives on', () => {
  const pvKwh = Float64Array.from({ length: 24 }, (_, h) => (h >= 8 && h < 16 ? 1.5 : 0))
  const from18 = (kwh: number): number =>
    outageHours({ kwhOfHour: flat(0.5), pvKwh }, battery({}), always(kwh), kwh)[18] ?? NaN
  expect(from18(4)).toBe(8)
  expect(from18(8)).toBe(LONGEST_OUTAGE_H)
})

test('what the battery cannot carry at once ends at once', () => {
  const lasts = outageHours({ kwhOfHour: flat(6), pvKwh: undefined }, battery({}), always(10), 10)
  expect(lasts[0]).toBe(0)
})

test('loads follow the clock', () => {
  const kwhOfHour = flat(0)
  kwhOfHour[20] = 4
  const lasts = outageHours({ kwhOfHour, pvKwh: undefined }, battery({}), always(6), 6)
  expect(lasts[20]).toBeCloseTo(24.5, 9)
  expect(lasts[21]).toBeCloseTo(47.5, 9)
})
