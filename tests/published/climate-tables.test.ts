import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import {
  climateSites,
  DAYS_IN_MONTH,
  monthlyRecord,
  nearestSnowfall,
  poolSites,
  siteQuality,
  siteRecord,
  type ClimateSite,
} from '../../src/climate/index.js'

interface Row {
  readonly wmo: string
}
type Months = readonly number[]

/** Sums of every column and some whole rows, taken from the sources of the tables apart from what wrote the tables. */
const SOURCE = JSON.parse(readFileSync(new URL('fixtures/climate-rows.json', import.meta.url), 'utf8')) as {
  readonly extraSums: Record<'ghi' | 'dhi' | 'tmean' | 'tmax' | 'tmin' | 'wind', Months>
  readonly shapeSums: Record<'am_ghi' | 'am_dhi', Months>
  readonly snowSums: Months
  readonly extraPlaces: Months
  readonly satelliteSum: number
  readonly wrongClocks: readonly string[]
  readonly regions: Record<string, number>
  readonly farSnow: readonly string[]
  readonly extraRows: readonly (Row & {
    readonly name: string
    readonly state: string
    readonly lat: number
    readonly lon: number
    readonly elevM: number
    readonly ghi: Months
    readonly dhi: Months
    readonly tmean: Months
    readonly tmax: Months
    readonly tmin: Months
    readonly wind: Months
    readonly am_ghi: Months
    readonly am_dhi: Months
  })[]
  readonly shapeRows: readonly (Row & {
    readonly region: string
    readonly satellite: number
    readonly am_ghi: Months
    readonly am_dhi: Months
  })[]
  readonly snowRows: readonly (Row & {
    readonly lat: number
    readonly lon: number
    readonly snow: Months
    readonly provisional: number
  })[]
}

const extra = poolSites().filter((site) => !climateSites().includes(site))
const siteOf = (wmo: string): ClimateSite => poolSites().find((site) => site.wmo === wmo)!
const columnSums = (rows: readonly Months[], scale: number): number[] =>
  Array.from({ length: 12 }, (_, month) => Math.round(scale * rows.reduce((sum, row) => sum + row[month]!, 0)))

describe('the stations without design temperatures', () => {
  const records = extra.map(monthlyRecord)
  it('are 144 beside the 864, all with numbers of their own', () => {
    expect(extra).toHaveLength(144)
    expect(new Set(poolSites().map((site) => site.wmo)).size).toBe(1008)
    expect(() => siteRecord(extra[0]!)).toThrow(/no design temperatures/)
  })
  it('have every column of their source, summed', () => {
    const { ghi, dhi, tmean, tmax, tmin, wind } = SOURCE.extraSums
    const summed = (key: 'meanC' | 'meanMaxC' | 'meanMinC' | 'windMs'): number[] =>
      columnSums(
        records.map((one) => one[key]),
        10,
      )
    const light = (key: 'ghiWhM2Day' | 'dhiWhM2Day'): number[] =>
      columnSums(
        records.map((one) => one[key]),
        1,
      )
    expect([light('ghiWhM2Day'), light('dhiWhM2Day')]).toEqual([ghi, dhi])
    expect([summed('meanC'), summed('meanMaxC'), summed('meanMinC'), summed('windMs')]).toEqual([
      tmean,
      tmax,
      tmin,
      wind,
    ])
    const place = (pick: (site: ClimateSite) => number, scale: number): number =>
      Math.round(scale * extra.reduce((sum, site) => sum + pick(site), 0))
    expect([
      place((one) => one.latitudeDeg, 1000),
      place((one) => one.longitudeDeg, 1000),
      place((one) => one.elevationM, 1),
      place((one) => one.utcOffsetH, 10),
    ]).toEqual(SOURCE.extraPlaces)
  })
  it.each(SOURCE.extraRows)('have the row of $name', (row) => {
    const site = siteOf(row.wmo)
    expect(site).toMatchObject({ name: row.name, state: row.state, latitudeDeg: row.lat, longitudeDeg: row.lon })
    expect(site.elevationM).toBe(row.elevM)
    expect(monthlyRecord(site)).toEqual({
      ghiWhM2Day: row.ghi,
      dhiWhM2Day: row.dhi,
      meanC: row.tmean,
      meanMaxC: row.tmax,
      meanMinC: row.tmin,
      windMs: row.wind,
    })
    expect(siteQuality(site)).toMatchObject({ region: undefined, morningGhi: row.am_ghi, morningDhi: row.am_dhi })
  })
  it('have diffuse within global light, and temperatures in their order', () => {
    for (const record of records) {
      for (let month = 0; month < 12; month++) {
        expect(record.dhiWhM2Day[month]).toBeLessThanOrEqual(record.ghiWhM2Day[month]! + 1)
        expect(record.meanMinC[month]).toBeLessThanOrEqual(record.meanC[month]!)
        expect(record.meanC[month]).toBeLessThanOrEqual(record.meanMaxC[month]!)
      }
    }
  })
})

describe('the shape of days', () => {
  const qualities = poolSites().map((site) => ({ site, ...siteQuality(site) }))
  it('has every column of its source, summed', () => {
    expect(
      columnSums(
        qualities.map((one) => one.morningGhi),
        1000,
      ),
    ).toEqual(SOURCE.shapeSums.am_ghi)
    expect(
      columnSums(
        qualities.map((one) => one.morningDhi),
        1000,
      ),
    ).toEqual(SOURCE.shapeSums.am_dhi)
    expect(Math.round(100 * qualities.reduce((sum, one) => sum + one.satelliteShare, 0))).toBe(SOURCE.satelliteSum)
  })
  it.each(SOURCE.shapeRows)('has the row of $wmo', (row) => {
    expect(siteQuality(siteOf(row.wmo))).toMatchObject({
      region: row.region,
      satelliteShare: row.satellite,
      morningGhi: row.am_ghi,
      morningDhi: row.am_dhi,
    })
  })
  it('knows the sixteen wrong clocks and the regions', () => {
    const wrong = qualities.filter((one) => !one.clockRight).map((one) => one.site.wmo)
    expect(wrong.toSorted()).toEqual(SOURCE.wrongClocks)
    expect(wrong).toHaveLength(16)
    for (const [region, count] of Object.entries(SOURCE.regions)) {
      expect(qualities.filter((one) => one.region === region)).toHaveLength(count)
    }
  })
  // Printed beside the table: Los Angeles 0.476, Phoenix 0.498, Boston 0.500 of the year.
  it.each([
    ['722950', 0.476],
    ['722780', 0.498],
    ['725090', 0.5],
  ])('gives the yearly share before noon at %s', (wmo, expected) => {
    const ghi = monthlyRecord(siteOf(wmo)).ghiWhM2Day.map((value, month) => value * DAYS_IN_MONTH[month]!)
    const before = ghi.reduce((sum, value, month) => sum + value * siteQuality(siteOf(wmo)).morningGhi[month]!, 0)
    expect(before / ghi.reduce((a, b) => a + b, 0)).toBeCloseTo(expected, 3)
  })
})

describe('snowfall', () => {
  const snow = climateSites().map((site) => nearestSnowfall(site)!)
  it('has every column of its source, summed', () => {
    const spot = snow.filter((one) => one.distanceKm === 0)
    expect(spot).toHaveLength(864)
    expect(
      columnSums(
        snow.flatMap((one) => (one.monthlyIn === undefined ? [] : [one.monthlyIn])),
        10,
      ),
    ).toEqual(SOURCE.snowSums)
  })
  it('is unknown where the normals are of a place too far or too high', () => {
    const unknown = climateSites().filter((site) => nearestSnowfall(site)!.monthlyIn === undefined)
    expect(unknown.map((site) => site.wmo).toSorted()).toEqual(SOURCE.farSnow)
    expect(unknown).toHaveLength(24)
  })
  it.each(SOURCE.snowRows)('has the row of $wmo', (row) => {
    const near = nearestSnowfall({ latitudeDeg: row.lat, longitudeDeg: row.lon })!
    expect(near.site.wmo).toBe(row.wmo)
    expect(near.monthlyIn).toEqual(row.snow)
    expect(near.provisionalMonths).toBe(row.provisional)
  })
  // Airport values of the period, from memory: they tell a column or a unit that is off, not a cell.
  it.each([
    ['Duluth', 46.84, -92.18, 86],
    ['Burlington VT', 44.47, -73.15, 81],
    ['Buffalo', 42.94, -78.73, 95],
    ['Boston', 42.36, -71.01, 44],
  ])('is about what is known of %s', (_, latitudeDeg, longitudeDeg, inches) => {
    expect(Math.abs(nearestSnowfall({ latitudeDeg, longitudeDeg })!.yearIn! - inches)).toBeLessThan(1.5)
  })
  it('is none on tropical islands, and nothing is said out of reach', () => {
    expect(nearestSnowfall({ latitudeDeg: 21.3, longitudeDeg: -157.9 })!.yearIn).toBe(0)
    expect(nearestSnowfall({ latitudeDeg: 51.5, longitudeDeg: 0 })).toBeUndefined()
  })
})
