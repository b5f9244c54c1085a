import { expect, it } from 'vitest'
import { fillGaps } from '../../src/climate/series/fill-gaps.js'
import { qualityOf } from '../../src/climate/series/quality.js'
import type { RowSun } from '../../src/climate/series/row-sun.js'

/** Days of four rows of 6 h, the sun up in the middle two; each day has its own sun above the air. */
const sunOf = (daily: readonly number[]): RowSun => {
  const rows = daily.flatMap((level) => [0, level, level, 0])
  return {
    cosZenith: Float64Array.from(rows, (level) => (level > 0 ? 0.5 : -0.5)),
    normalWM2: Float64Array.from(rows, () => 1361),
    sunlit: Float64Array.from(rows, (level) => (level > 0 ? 1 : 0)),
    levelWM2: Float64Array.from(rows),
    sunEast: new Float64Array(rows.length),
    sunNorth: new Float64Array(rows.length),
  }
}

it('a day like those beside it has light in proportion to its own sun above the air', () => {
  const sun = sunOf([400, 450, 600, 700])
  const ghi = Float64Array.from([0, 200, 200, 0, 0, 0, 0, 0, 0, 300, 300, 0, 0, 350, 350, 0])
  const dhi = ghi.map((light) => light / 2)
  const dni = new Float64Array(16)
  const isMissing = Uint8Array.from({ length: 16 }, (_, row) => (row === 5 || row === 6 ? 1 : 0))
  expect(fillGaps({ ghi, dni, dhi }, isMissing, sun, 6).fromDays).toEqual([{ from: 5, rows: 2 }])
  // Clearness is 0.5 on both days, and so it is in between.
  expect([ghi[5], dhi[5], dni[5]]).toEqual([225, 112.5, 225])
})

it('more diffuse than global is counted, with two radiations too', () => {
  const sun = sunOf([400])
  const quality = qualityOf(
    { ghi: Float64Array.of(0, 100, 101, 0), dni: undefined, dhi: Float64Array.of(0, 104, 107, 0) },
    sun,
    6,
  )
  expect([quality.diffuseAbove, quality.failing, quality.daylight]).toEqual([[2], [2], 2])
})
