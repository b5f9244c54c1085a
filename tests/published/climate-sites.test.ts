import { describe, expect, it } from 'vitest'
import { climateSites, siteRecord } from '../../src/climate/index.js'

const DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
const annualKWhM2 = (perDay: readonly number[]): number =>
  perDay.reduce((sum, value, month) => sum + (value * DAYS[month]!) / 1000, 0)
const byWmo = (wmo: string) => {
  const site = climateSites().find((one) => one.wmo === wmo)!
  return { site, record: siteRecord(site) }
}

describe('the site table against what its makers and the files say', () => {
  // Statements about the TMY3 data set as processed by the makers of the table.
  it('holds 864 sites of the 50 states, Puerto Rico and Guam', () => {
    const sites = climateSites()
    expect(sites).toHaveLength(864)
    expect(new Set(sites.map((site) => site.wmo)).size).toBe(864)
    expect(new Set(sites.map((site) => site.state)).size).toBe(52)
  })

  it('runs from 581 kWh/m2 a year (Shemya AK) to 2109 (Truth or Consequences NM)', () => {
    const years = climateSites().map((site) => ({ site, ghi: annualKWhM2(siteRecord(site).ghiWhM2Day) }))
    years.sort((a, b) => a.ghi - b.ghi)
    expect(years[0]!.site.name).toContain('SHEMYA')
    expect(years[0]!.ghi).toBeCloseTo(581, 0)
    expect(years.at(-1)!.site.name).toContain('TRUTH OR CONSEQUENCES')
    expect(years.at(-1)!.ghi).toBeCloseTo(2109, 0)
  })

  it('falls by about 26 kWh/m2 a year for each degree of latitude below 50 north', () => {
    const points = climateSites()
      .filter((site) => site.latitudeDeg < 50)
      .map((site) => [site.latitudeDeg, annualKWhM2(siteRecord(site).ghiWhM2Day)] as const)
    const mean = (index: 0 | 1): number => points.reduce((sum, point) => sum + point[index], 0) / points.length
    const [x, y] = [mean(0), mean(1)]
    const slope =
      points.reduce((sum, point) => sum + (point[0] - x) * (point[1] - y), 0) /
      points.reduce((sum, point) => sum + (point[0] - x) ** 2, 0)
    expect(slope).toBeGreaterThan(-26.6)
    expect(slope).toBeLessThan(-25.4)
  })

  it('gives Boston 1408 and Duluth 1342 kWh/m2 a year', () => {
    expect(annualKWhM2(byWmo('725090').record.ghiWhM2Day)).toBeCloseTo(1408, 0)
    expect(annualKWhM2(byWmo('727450').record.ghiWhM2Day)).toBeCloseTo(1342, 0)
  })

  // DESIGN CONDITIONS line of the EPW (ASHRAE Handbook of Fundamentals 2009): cooling 0.4 % 29.4, mean of the annual
  // minimum -6.3 deg C.
  it('has the design temperatures of the header of the Seattle-Tacoma file', () => {
    const { record } = byWmo('727930')
    expect(record.high0p4pctC).toBe(29.4)
    expect(record.extremeLowC).toBe(-6.3)
    expect(record.extremeLowEstimatedFrom).toBeUndefined()
  })

  it('keeps the checks of its makers', () => {
    for (const site of climateSites()) {
      const record = siteRecord(site)
      for (let month = 0; month < 12; month++) {
        expect(record.meanMinC[month]).toBeLessThanOrEqual(record.meanC[month]!)
        expect(record.meanC[month]).toBeLessThanOrEqual(record.meanMaxC[month]!)
        expect(record.dhiWhM2Day[month]).toBeLessThanOrEqual(record.ghiWhM2Day[month]! + 30)
      }
      expect(record.extremeLowC === undefined).toBe(site.flags.includes('no_extreme_min'))
      expect(record.windMs.every((wind) => wind >= 0 && wind < 20)).toBe(true)
    }
  })

  it('has estimated 2 % highs by -1.207 + 1.018 T of the annual 0.4 % value, both rounded to 0.1', () => {
    const estimated = climateSites()
      .map(siteRecord)
      .filter((record) => record.high2pctEstimated)
    expect(estimated).toHaveLength(848)
    for (const record of estimated) {
      expect(Math.abs(record.high2pctC - (-1.207 + 1.018 * record.high0p4pctC))).toBeLessThan(0.102)
    }
  })
})
