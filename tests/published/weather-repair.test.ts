import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { splitGlobal } from '../../src/climate/series/components.js'
import { layOutYear } from '../../src/climate/series/lay-out-year.js'
import { readTypicalYear } from '../../src/climate/series/read-typical-year.js'
import { erbsHourly } from '../../src/sun/index.js'

// Worked cases of the hourly correlation of Erbs, Klein & Duffie 1982 (secondary: constants read in three independent
// public codes), solar constant 1361.1 W/m2: GHI, cosine of the zenith angle, I0 -> kt, kd, DHI, DNI.
describe('splitting global radiation', () => {
  it.each([
    [100, 0.5, 1361.1, 0.1469, 0.9868, 98.7, 2.6],
    [300, 0.5, 1361.1, 0.4408, 0.7737, 232.1, 135.8],
    [450, 0.5, 1361.1, 0.6612, 0.3117, 140.2, 619.5],
    [600, 0.8, 1330, 0.5639, 0.5199, 311.9, 360.1],
    [850, 0.9, 1320, 0.7155, 0.2214, 188.2, 735.3],
  ])('%d W/m2 under a sun of cos z %d', (ghi, cosZenith, normal, kt, kd, dhi, dni) => {
    expect(ghi / (normal * cosZenith)).toBeCloseTo(kt, 4)
    expect(erbsHourly(ghi / (normal * cosZenith))).toBeCloseTo(kd, 4)
    const parts = splitGlobal(ghi, cosZenith, normal)
    expect(Math.abs(parts.dhi - dhi)).toBeLessThanOrEqual(0.0501)
    expect(Math.abs(parts.dni - dni)).toBeLessThanOrEqual(0.0501)
  })

  it('calls all light diffuse below 5 deg, and lets no direct light exceed the sun above the air', () => {
    expect(splitGlobal(40, Math.sin((4.9 / 180) * Math.PI), 1361.1)).toEqual({ dni: 0, dhi: 40 })
    const bright = splitGlobal(1300, 0.75, 1361.1)
    expect(bright.dni).toBe(1361.1)
    expect(bright.dni * 0.75 + bright.dhi).toBeCloseTo(1300, 9)
    expect(splitGlobal(12, -0.1, 1361.1)).toEqual({ dni: 0, dhi: 12 })
  })
})

/** Four days of a public typical year of Denver (US government data), both header lines, values of the file itself. */
const DENVER = readFileSync(new URL('fixtures/typical-year-denver-4-days.csv', import.meta.url), 'utf8')

describe('a typical year in CSV', () => {
  it('is read by the names of its columns, in the unit of its header', () => {
    const file = readTypicalYear(DENVER)
    expect(file).toMatchObject({
      name: 'DENVER INTL AP, CO',
      latitudeDeg: 39.833,
      longitudeDeg: -104.65,
      utcOffsetH: -7,
      elevationM: 1650,
      stampsMark: 'ending',
    })
    expect(file.rows.length).toBe(96)
    expect([...file.rows.energies]).toEqual([])
    // First row: 01/01/1995 01:00, dry bulb -18.0 deg C, wind 0.0 m/s.
    const value = (name: 'ghi' | 'dni' | 'dhi' | 'dryBulb' | 'wind', row: number) => file.rows.columns.get(name)![row]
    expect([value('dryBulb', 0), value('wind', 0), value('ghi', 0)]).toEqual([-18, 0, 0])
    expect(new Date(file.rows.stampMs[23]!).toISOString()).toBe('1995-01-02T00:00:00.000Z')
  })

  it('is laid out with the sun at mid-hour, months of any year', () => {
    const year = layOutYear(readTypicalYear(DENVER), undefined)
    expect([year.length, year.stepH, year.middleH[0], year.line[0], year.line[24]]).toEqual([8760, 1, 0.5, 3, 27])
    expect(year.columns.get('dryBulb')![0]).toBe(-18)
    // 1 July is day 182: its first hour stands in line 51.
    expect(year.line[181 * 24]).toBe(51)
  })
})
