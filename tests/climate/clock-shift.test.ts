import { describe, expect, it } from 'vitest'
import { checkClock, clockShift, closureRmsWM2, parseEpw, type HourlyClimate } from '../../src/climate/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { SEATTLE_EPW } from './epw-fixture.js'

const { climate } = parseEpw(SEATTLE_EPW)
const RADIATIONS = ['ghiWM2', 'dniWM2', 'dhiWM2'] as const

/** The same hours with radiation moved by whole rows: +1 stamps each hour one hour later than it was. */
function moved(rows: number): HourlyClimate {
  const copy = { ...climate }
  for (const key of RADIATIONS) {
    const values = climate[key]
    copy[key] = values.map((_, row) => values[(row - rows + values.length) % values.length]!)
  }
  return copy
}

const findings = (file: HourlyClimate) => {
  const worksheet = new Worksheet()
  checkClock(file, worksheet)
  return worksheet.result(0).findings
}

describe('the clock check', () => {
  it('is silent about a sound file', () => {
    expect(findings(climate)).toEqual([])
  })

  it.each([
    ['stamped at the start of the hour', -1, 1, 'early', '+1.00 h'],
    ['in daylight saving time', 1, -1, 'late', '-1.00 h'],
  ])('finds a copy %s', (_, rows, shiftH, word, said) => {
    const shift = clockShift(moved(rows))
    // Whole hours are exact for the sun but for the noise of 0.05 h steps.
    expect(Math.abs(shift.shiftH - shiftH)).toBeLessThanOrEqual(0.05)
    expect(shift.rmsShiftedWM2).toBeLessThan(5)
    expect(shift.rmsAsStampedWM2).toBeGreaterThan(40)
    const [finding] = findings(moved(rows))
    expect(finding).toMatchObject({ severity: 'warning', id: 'climate.clock-shift' })
    expect(finding!.message).toContain(`too ${word}`)
    expect(finding!.message).toContain(said)
  })

  it('finds half an hour, here from a time zone that is half an hour wrong', () => {
    const shift = clockShift({ ...climate, utcOffsetH: -7.5 })
    expect(shift.shiftH).toBeCloseTo(0.5, 6)
    expect(findings({ ...climate, utcOffsetH: -7.5 })[0]?.id).toBe('climate.clock-shift')
  })

  it('tells a tenth of an hour, and does not believe less', () => {
    expect(findings({ ...climate, utcOffsetH: -7.9 })[0]?.message).toContain('+0.10 h')
    expect(findings({ ...climate, utcOffsetH: -7.95 })).toEqual([])
  })

  it('says when the radiations disagree whatever the clock', () => {
    const doubled = { ...climate, dhiWM2: climate.dhiWM2.map((value) => value * 1.6) }
    expect(findings(doubled).map((one) => one.id)).toEqual(['climate.closure-poor'])
  })

  it('gives the same from every third day as from all', () => {
    expect(clockShift(moved(1), 1).shiftH).toBeCloseTo(clockShift(moved(1), 3).shiftH, 6)
    expect(clockShift(climate, 1).rmsAsStampedWM2).toBe(closureRmsWM2(climate, 0))
  })

  it('has nothing to say about a file without sun', () => {
    const dark = { ...climate, ghiWM2: climate.ghiWM2.map(() => 0) }
    expect(clockShift(dark)).toEqual({ shiftH: 0, rmsAsStampedWM2: 0, rmsShiftedWM2: 0 })
    expect(findings(dark)).toEqual([])
  })
})
