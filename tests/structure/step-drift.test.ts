import { describe, expect, it } from 'vitest'
import { driftHeightFt, stepDrifts, wallDrifts, type RoofStep, type RoofWall } from '../../src/structure/snow/index.js'

const step: RoofStep = {
  edition: 'ASCE 7-16',
  winterWind: undefined,
  groundPsf: 40,
  balancedPsf: 28,
  stepFt: 10,
  upperLengthFt: 100,
  lowerLengthFt: 170,
  gapFt: 0,
}
/** Of pg 40 and a fetch of 100 ft; density 19.2. */
const FULL_FT = 0.43 * 100 ** (1 / 3) * 50 ** (1 / 4) - 1.5
const leeward = (change: Partial<RoofStep>) =>
  stepDrifts({ ...step, ...change }).drifts?.find((d) => d.wind === 'leeward')

describe('across a gap', () => {
  it('a high step keeps the height, and the drift is 6 heights wide', () => {
    const drift = leeward({ gapFt: 8 })
    expect(drift?.heightFt).toBeCloseTo(FULL_FT, 9)
    expect(drift?.widthFt).toBeCloseTo(6 * FULL_FT, 9)
    expect(drift?.peakPsf).toBeCloseTo(19.2 * FULL_FT, 9)
  })
  it('a low one takes (6 h - s) / 6 and a width of 6 h - s', () => {
    const drift = leeward({ stepFt: 4, gapFt: 16 })
    expect(drift?.heightFt).toBeCloseTo((24 - 16) / 6, 9)
    expect(drift?.widthFt).toBeCloseTo(24 - 16, 9)
    // The wall shows 3 - 28 / 19.2 ft above the snow, less than the 10 / 6 ft.
    expect(leeward({ stepFt: 3, gapFt: 8 })?.heightFt).toBeCloseTo(3 - 28 / 19.2, 9)
  })
  it('no leeward drift reaches 20 ft or 6 steps; the windward one stays', () => {
    for (const change of [{ gapFt: 20 }, { stepFt: 3, gapFt: 18 }]) {
      expect(leeward(change)).toBeUndefined()
      expect(stepDrifts({ ...step, ...change }).drifts?.map(({ wind }) => wind)).toEqual(['windward'])
    }
    expect(leeward({ gapFt: 19.9 })).toBeDefined()
  })
})

describe('limits', () => {
  it('a leeward drift is at most 0.6 of a short lower roof, from 7-16 on', () => {
    expect(leeward({ lowerLengthFt: 5 })?.heightFt).toBeCloseTo(3, 9)
    expect(leeward({ lowerLengthFt: 5, edition: 'ASCE 7-10' })?.heightFt).toBeCloseTo(FULL_FT, 9)
  })
  it('a drift that is cut off gets wider, up to 8 clear heights', () => {
    const clearFt = 4 - 28 / 19.2
    const drift = leeward({ stepFt: 4 })
    expect(drift?.heightFt).toBeCloseTo(clearFt, 9)
    expect(drift?.widthFt).toBeCloseTo(Math.min((4 * FULL_FT ** 2) / clearFt, 8 * clearFt), 9)
    const low = leeward({ stepFt: 2.5 })
    expect(low?.widthFt).toBeCloseTo(8 * (2.5 - 28 / 19.2), 9)
  })
  it('a windward drift of 7-22 is 8 heights wide, cut off or not', () => {
    const windward = (stepFt: number) =>
      stepDrifts({ ...step, edition: 'ASCE 7-22', winterWind: 0.6, stepFt }).drifts?.find((d) => d.wind === 'windward')
    expect(windward(20)?.widthFt).toBeCloseTo(8 * (windward(20)?.fullHeightFt ?? 0), 9)
    expect(windward(4)?.heightFt).toBeLessThan(windward(4)?.fullHeightFt ?? 0)
    expect(windward(4)?.widthFt).toBeCloseTo(8 * (windward(4)?.fullHeightFt ?? 0), 9)
  })
  it('of two drifts up to 7-16 the higher counts; from 7-22 on both', () => {
    const winds = (change: Partial<RoofStep>) => stepDrifts({ ...step, ...change }).drifts?.map(({ wind }) => wind)
    expect(winds({ upperLengthFt: 20, lowerLengthFt: 200 })).toEqual(['windward'])
    expect(winds({ upperLengthFt: 60, lowerLengthFt: 60 })).toEqual(['leeward'])
    expect(winds({ edition: 'ASCE 7-22', winterWind: 0.4 })).toEqual(['leeward', 'windward'])
  })
  it('the fetch is at least 25 ft in 7-10 and 20 ft in 7-16', () => {
    const short = { upperLengthFt: 8, lowerLengthFt: 8 }
    const fetch = (edition: RoofStep['edition']) =>
      stepDrifts({ ...step, ...short, edition, winterWind: 0.5 }).drifts?.[0]?.fetchFt
    expect([fetch('ASCE 7-10'), fetch('ASCE 7-16'), fetch('ASCE 7-22')]).toEqual([25, 20, 8])
  })
  it('there is none where snow nearly fills the step', () => {
    const balancedFt = 28 / 19.2
    expect(stepDrifts({ ...step, stepFt: 1.19 * balancedFt })).toMatchObject({ drifts: [] })
    expect(stepDrifts({ ...step, stepFt: 1.19 * balancedFt }).none).toMatch(/fills/)
    expect(stepDrifts({ ...step, stepFt: 1.21 * balancedFt }).drifts).toHaveLength(1)
    expect(stepDrifts({ ...step, stepFt: 0.5 }).drifts).toEqual([])
  })
  it('7-22 has none where ground snow and fetch are small', () => {
    const mild = (groundPsf: number, upperLengthFt: number) =>
      stepDrifts({ ...step, edition: 'ASCE 7-22', winterWind: undefined, groundPsf, upperLengthFt, lowerLengthFt: 20 })
    expect(mild(10, 100).drifts).toEqual([])
    expect(mild(5, 300).drifts).toEqual([])
    // Otherwise W2 is needed.
    expect(mild(10.1, 100).drifts).toBeUndefined()
    expect(mild(10, 101).drifts).toBeUndefined()
    expect(mild(5, 301).drifts).toBeUndefined()
  })
  it('a wall shorter than 15 ft, such as a chimney, makes none', () => {
    const wall: RoofWall = { ...step, heightFt: 4, lengthFt: 14.9, fetchFt: 40 }
    expect(wallDrifts(wall).none).toMatch(/15 ft/)
    expect(wallDrifts({ ...wall, lengthFt: 15 }).drifts?.[0]?.heightFt).toBeCloseTo(
      Math.min(0.75 * (driftHeightFt(step, 40) ?? 0), 4 - 28 / 19.2),
      9,
    )
    expect(wallDrifts({ ...wall, lengthFt: 15, edition: 'ASCE 7-22' }).drifts).toBeUndefined()
  })
  it('there is none without snow or fetch', () => {
    expect(driftHeightFt({ ...step, groundPsf: 0 }, 100)).toBe(0)
    expect(driftHeightFt(step, 0)).toBe(0)
  })
})
