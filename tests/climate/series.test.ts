import { describe, expect, it } from 'vitest'
import { climateOf, rowsOf, SEATTLE, stationText, yearSum } from './series-fixture.js'

const hours = rowsOf(2025)

describe('a station of hours', () => {
  it('is the year that it was made from', () => {
    const { climate, ids, findings, steps } = climateOf(stationText(hours, 0.5))
    console.log(findings, steps.map((s) => [s.id, s.result]))
    expect(ids).toEqual([])
    expect(climate.length).toBe(8760)
    expect(yearSum(climate.dniWM2, 1)).toBeCloseTo(yearSum(SEATTLE.dniWM2, 1), -3)
  })
  it('5 min', () => {
    const t0 = performance.now()
    const rows = rowsOf(2024, 5)
    const text = stationText(rows, 5 / 120)
    const t1 = performance.now()
    const { climate, findings, steps } = climateOf(text)
    console.log(t1 - t0, performance.now() - t1, findings, steps.map((s) => [s.id, s.result]), climate.length)
  })
})
