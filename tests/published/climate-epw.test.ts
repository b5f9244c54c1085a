import { describe, expect, it } from 'vitest'
import {
  climateSites,
  clockShift,
  closureRmsWM2,
  monthlyFromHourly,
  parseEpw,
  siteRecord,
} from '../../src/climate/index.js'
import { SEATTLE_EPW } from '../climate/epw-fixture.js'

const { climate, location } = parseEpw(SEATTLE_EPW)
const record = siteRecord(climateSites().find((site) => site.wmo === '727930')!)

describe('the public typical year of Seattle-Tacoma airport (EPW, NREL TMY data set 2008)', () => {
  it('says where it is for', () => {
    expect(location).toMatchObject({ state: 'WA', country: 'USA', dataSource: 'TMY3', wmo: '727930' })
    expect(location).toMatchObject({ latitudeDeg: 47.47, longitudeDeg: -122.32, utcOffsetH: -8, elevationM: 122 })
  })

  // Closure of DNI cos z + DHI - GHI, rms W/m2, from an independent reading of the same file with the Spencer 1971
  // declination and a two-term equation of time. At mid-hour a better sun may only do better; half an hour away the
  // closure must be as bad as it was found, within the difference of the two equations of time (some 0.3 W/m2).
  it('closes within 3.1 W/m2 with the sun at mid-hour', () => {
    expect(closureRmsWM2(climate, 0)).toBeLessThan(3.15)
    expect(closureRmsWM2(climate, 0)).toBeGreaterThan(2)
  })
  it.each([
    ['at the label', 0.5, 22.4],
    ['one hour before the label', -0.5, 22.2],
  ])('closes badly with the sun %s', (_, shiftH, rmsWM2) => {
    expect(Math.abs(closureRmsWM2(climate, shiftH) - rmsWM2)).toBeLessThan(0.35)
  })
  it('has a right clock', () => {
    expect(clockShift(climate).shiftH).toBe(0)
  })

  // The site table was made from the TMY3 file of the same station, rounded to 1 Wh/m2, 0.1 deg C and 0.1 m/s.
  it('has the monthly means of the site table', () => {
    const monthly = monthlyFromHourly(climate)
    for (let month = 0; month < 12; month++) {
      expect(Math.abs(monthly.ghiWhM2Day[month]! / record.ghiWhM2Day[month]! - 1)).toBeLessThan(0.01)
      expect(Math.abs(monthly.dhiWhM2Day[month]! / record.dhiWhM2Day[month]! - 1)).toBeLessThan(0.01)
      for (const key of ['meanC', 'meanMaxC', 'meanMinC', 'windMs'] as const) {
        // Half a last digit of the table, and the joints between months that the file's maker smoothed.
        expect(Math.abs(monthly[key][month]! - record[key][month]!)).toBeLessThan(0.1)
      }
    }
  })

  it('reads the values of a known hour', () => {
    // Line 17 of the file: 1 January, hour 9.
    expect([climate.month[8], climate.day[8], climate.hour[8], climate.dayOfYear[8]]).toEqual([1, 1, 9, 1])
    expect([climate.ghiWM2[8], climate.dniWM2[8], climate.dhiWM2[8]]).toEqual([11, 4, 11])
    expect([climate.dryBulbC[8], climate.windMs[8], climate.snowDepthCm[8]]).toEqual([7.8, 4.6, 0])
    expect([climate.length, climate.dayOfYear[8759], climate.hour[8759]]).toEqual([8760, 365, 24])
  })
})
