import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import {
  climateSites,
  distanceKm,
  monthlyRecord,
  poolSites,
  DAYS_IN_MONTH,
  monthlyExtraterrestrialWhM2Day,
  nearbyClimate,
  siteClimate,
  siteQuality,
  siteRecord,
  stationClimate,
  type House,
  type MonthlyClimate,
} from '../../src/climate/index.js'
import { StageError, Worksheet } from '../../src/worksheet/index.js'

const nearby = (house: House): { climate: MonthlyClimate; ids: string[]; worksheet: Worksheet } => {
  const worksheet = new Worksheet()
  const climate = nearbyClimate(house, worksheet)
  return { climate, ids: worksheet.result(0).findings.map((finding) => finding.id), worksheet }
}
const site = (wmo: string) => poolSites().find((one) => one.wmo === wmo)!
const series = ['ghiWhM2Day', 'dhiWhM2Day', 'clearness', 'meanC', 'meanMaxC', 'meanMinC', 'windMs'] as const

/** Yearly irradiation on the level, kWh/m2. */
const year = (climate: MonthlyClimate): number =>
  climate.ghiWhM2Day.reduce((sum, perDay, month) => sum + (perDay * DAYS_IN_MONTH[month]!) / 1000, 0)

/** The error of a run that must fail. */
function refusal(run: () => unknown): StageError {
  try {
    run()
  } catch (error) {
    if (error instanceof StageError) return error
    throw error
  }
  throw new Error('did not fail')
}

function expectSound(climate: MonthlyClimate): void {
  for (const key of series) {
    expect(climate[key]).toHaveLength(12)
    expect(climate[key].every(Number.isFinite)).toBe(true)
  }
  expect(Number.isFinite(climate.elevationM) && Number.isFinite(climate.spreadRel)).toBe(true)
  for (let month = 0; month < 12; month++) {
    expect(climate.dhiWhM2Day[month]).toBeGreaterThanOrEqual(0)
    expect(climate.dhiWhM2Day[month]).toBeLessThanOrEqual(climate.ghiWhM2Day[month]!)
    expect(climate.clearness[month]).toBeLessThanOrEqual(0.8 + 1e-9)
    expect(climate.meanMinC[month]).toBeLessThanOrEqual(climate.meanC[month]!)
    expect(climate.meanC[month]).toBeLessThanOrEqual(climate.meanMaxC[month]!)
  }
}

describe('nearbyClimate', () => {
  it('averages eight sites in the east, with weights of one over the effective distance, at least 20 km', () => {
    const { climate } = nearby({ latitudeDeg: 40, longitudeDeg: -100, elevationM: 700 })
    expect(climate.sites).toHaveLength(8)
    const effective = climate.sites.map((one) => Math.hypot(one.distanceKm, 0.2 * one.heightDifferenceM!))
    expect(effective).toEqual(effective.toSorted((a, b) => a - b))
    const [first, last] = [climate.sites[0]!, climate.sites[7]!]
    expect(first.weight / last.weight).toBeCloseTo(effective[7]! / Math.max(20, effective[0]!), 10)
    expect(climate.sites.reduce((sum, one) => sum + one.weight, 0)).toBeCloseTo(1, 12)
  })

  it('counts by the square of the distance in the west, one below 10 km as 10 km', () => {
    const { latitudeDeg, longitudeDeg, elevationM } = site('724880')
    const { climate } = nearby({ latitudeDeg, longitudeDeg, elevationM })
    expect(climate.sites[0]!.distanceKm).toBe(0)
    const second = climate.sites[1]!
    const effective = Math.hypot(second.distanceKm, 0.2 * second.heightDifferenceM!)
    expect(climate.sites[0]!.weight / second.weight).toBeCloseTo((Math.max(10, effective) / 10) ** 2, 9)
  })

  it('leaves out flagged sites of the east, but not those flagged for design temperature only', () => {
    // Indianapolis is flagged 12 % above its neighbours; San Francisco only for its late summer.
    expect(nearby({ ...site('724380') }).climate.sites.map((one) => one.wmo)).not.toContain('724380')
    const coast = climateSites().find((one) => one.state === 'CA' && one.flags.join(' ') === 'jja_high?')!
    expect(nearby({ ...coast }).climate.sites[0]!.wmo).toBe(coast.wmo)
  })

  // Yearly sums of the stations themselves, kWh/m2, from the public typical-year files; within 0.3 % of them on the
  // spot, as the other two sites count a few percent.
  it.each([
    ['Hilo HI, windward', 19.717, -155.05, '912850', 1646, 0.01],
    ['Arcata CA, fog coast', 40.978, -124.109, '725945', 1412, 0.02],
  ])('uses the flagged site at the doorstep: %s', (_, latitudeDeg, longitudeDeg, wmo, kwhM2, within) => {
    const { climate, worksheet } = nearby({ latitudeDeg, longitudeDeg })
    expect(climate.sites[0]!.wmo).toBe(wmo)
    expect(Math.abs(year(climate) / kwhM2 - 1)).toBeLessThan(within)
    expect(climate.leftOutRel).toBe(0)
    const { message } = worksheet.result(0).findings.find((one) => one.id === 'climate.station-flagged')!
    // Both figures: the site alone and the others without it.
    expect(message).toContain(`alone it gives ${kwhM2} kWh/m2 a year on the level, the other sites used`)
    expect(Number(/the other sites used (\d+) kWh/.exec(message)![1])).toBeGreaterThan(1.09 * kwhM2)
  })

  it.each([
    ['Indianapolis IN', 39.77, -86.16, '724380', 'INDIANAPOLIS INTL AP, IN'],
    ['Boston MA', 42.36, -71.06, '725090', "BOSTON LOGAN INT'L ARPT, MA"],
  ])(
    'names the site at the doorstep that it leaves out, with both figures: %s',
    (_, latitudeDeg, longitudeDeg, wmo, said) => {
      const { climate, worksheet } = nearby({ latitudeDeg, longitudeDeg })
      const finding = worksheet.result(0).findings.find((one) => one.id === 'climate.near-site-left-out')!
      expect(finding).toMatchObject({ severity: 'warning', where: 'site.climate' })
      expect(finding.message).toContain(said)
      const alone = stationClimate(wmo, { latitudeDeg, longitudeDeg }, new Worksheet())
      expect(finding.message).toContain(`alone it gives ${year(alone).toFixed(0)} kWh/m2 a year on the level`)
      expect(finding.message).toContain(`the sites used ${year(climate).toFixed(0)} kWh/m2`)
      expect(finding.fix).toContain(`'${wmo}'`)
    },
  )

  it('names or uses the nearest site on the spot of every site, with its sunshine within nine cases of ten', () => {
    for (const one of climateSites()) {
      const { climate, worksheet } = nearby({ ...one })
      const said = worksheet
        .result(0)
        .findings.map((finding) => finding.message)
        .join('\n')
      expect(said).toContain(`${one.name}, ${one.state}`)
      // Half a range of nine cases in ten of one year: method 8 %, weather 4 %, sites, sites left out.
      const sigma = Math.hypot(0.08, 0.04, climate.sitingErrorRel, climate.leftOutRel)
      const alone = stationClimate(one.wmo, one, new Worksheet())
      expect(Math.abs(year(alone) / year(climate) - 1), one.name).toBeLessThan(1.2815515655 * sigma)
    }
  })

  it('uses a flagged site where nothing else is within reach, and warns', () => {
    const { climate, ids } = nearby({ ...site('704140') })
    expect(climate.sites[0]!.name).toContain('SHEMYA')
    expect(ids).toContain('climate.station-flagged')
    expect(ids).toContain('climate.fewer-sites')
    expectSound(climate)
  })

  it('corrects temperature by 6.5 K/km to the height of the house and says so', () => {
    const place = { latitudeDeg: 39.7, longitudeDeg: -105 }
    const low = nearby({ ...place, elevationM: 1600 })
    const high = nearby({ ...place, elevationM: 3500 })
    // With one site the weights stay as they are.
    const single = (elevationM: number): MonthlyClimate =>
      stationClimate('725650', { ...place, elevationM }, new Worksheet())
    const [lowC, highC] = [single(1600), single(2600)]
    for (let month = 0; month < 12; month++) {
      expect(lowC.meanC[month]! - highC.meanC[month]!).toBeCloseTo(6.5, 9)
      expect(lowC.ghiWhM2Day[month]).toBe(highC.ghiWhM2Day[month])
    }
    const assumption = low.worksheet.result(0).assumptions.find((one) => one.unit === 'K/km')
    expect(assumption?.value).toBe(6.5)
    expect(high.ids).toContain('climate.site-height')
    expect(low.ids).not.toContain('climate.site-height')
  })

  it('says that the height of the sites was used when the house has none', () => {
    const { climate, worksheet } = nearby({ latitudeDeg: 40, longitudeDeg: -100 })
    const weighted = climate.sites.reduce((sum, one) => sum + one.weight * site(one.wmo).elevationM, 0)
    expect(climate.elevationM).toBeCloseTo(weighted, 9)
    const assumption = worksheet.result(0).assumptions.find((one) => one.path === 'site.elevation_ft')
    expect(Number(assumption?.value) * 0.3048).toBeCloseTo(weighted, 0)
    expect(climate.sites[0]!.heightDifferenceM).toBeUndefined()
  })

  it('takes the clock of the nearest site unless the project states one', () => {
    const place = { latitudeDeg: 40, longitudeDeg: -100 }
    expect(nearby(place).climate.utcOffsetH).toBe(site(nearby(place).climate.sites[0]!.wmo).utcOffsetH)
    const stated = nearby({ ...place, utcOffsetH: -5 })
    expect(stated.climate.utcOffsetH).toBe(-5)
    // Probably daylight saving time.
    expect(stated.ids).toContain('climate.utc-offset')
    expect(nearby({ ...place, utcOffsetH: -6 }).ids).not.toContain('climate.utc-offset')
  })

  it('warns when the first site is beyond 80 km and names it', () => {
    const { ids, worksheet } = nearby({ latitudeDeg: 27.5, longitudeDeg: -90, elevationM: 0 })
    expect(ids).toContain('climate.site-far')
    const finding = worksheet.result(0).findings.find((one) => one.id === 'climate.site-far')!
    expect(finding.message).toMatch(/\(\d+ km away, (\d+ m (higher|lower)|same height)\)/)
  })

  it('does not warn of a far site that hardly counts, and says how much each counts', () => {
    const { ids, climate, worksheet } = nearby({ latitudeDeg: 32.2, longitudeDeg: -110.9, elevationM: 790 })
    expect(climate.sites.at(-1)!.distanceKm).toBeGreaterThan(80)
    expect(climate.sites.at(-1)!.weight).toBeLessThan(0.1)
    expect(ids).not.toContain('climate.site-far')
    const note = worksheet.result(0).findings.find((one) => one.id === 'climate.sites-used')!
    const shares = [...note.message.matchAll(/(under 1|\d+) % /g)].map(([, share]) =>
      share === 'under 1' ? 0 : Number(share),
    )
    expect(shares).toHaveLength(8)
    expect(Math.abs(shares.reduce((sum, share) => sum + share, 0) - 100)).toBeLessThan(5)
  })

  it.each([
    ['London', 51.5, -0.1],
    ['Denver with the sign of its longitude lost', 39.7, 105],
    ['the middle of the Pacific', 0, -140],
  ])('refuses %s and points to an EPW file', (_, latitudeDeg, longitudeDeg) => {
    const error = refusal(() => nearby({ latitudeDeg, longitudeDeg }))
    expect(error.fix).toMatch(/EPW/)
    expect(error.message).toMatch(/within 500 km/)
  })

  it('has clearness, weights and temperatures within those of its neighbours, anywhere in the US, and no NaN', () => {
    // Up to 2 degrees from any site: all the land, and some water.
    const offset = fc.double({ min: -2, max: 2, noNaN: true })
    const places = fc
      .tuple(fc.constantFrom(...climateSites()), offset, offset)
      .map(([one, north, east]) => ({ latitudeDeg: one.latitudeDeg + north, longitudeDeg: one.longitudeDeg + east }))
    fc.assert(
      fc.property(places, fc.option(fc.integer({ min: 0, max: 3500 }), { nil: undefined }), (place, elevationM) => {
        const { climate } = nearby({ ...place, elevationM })
        expectSound(climate)
        expect(climate.sites.reduce((sum, one) => sum + one.weight, 0)).toBeCloseTo(1, 12)
        const used = climate.sites.map((one) => ({ place: site(one.wmo), record: monthlyRecord(site(one.wmo)) }))
        for (let month = 0; month < 12; month++) {
          const winds = used.map((one) => one.record.windMs[month]!)
          expect(climate.windMs[month]).toBeGreaterThanOrEqual(Math.min(...winds) - 1e-9)
          expect(climate.windMs[month]).toBeLessThanOrEqual(Math.max(...winds) + 1e-9)
          const warm = used.map(
            (one) => one.record.meanC[month]! + 0.0065 * (one.place.elevationM - climate.elevationM),
          )
          expect(climate.meanC[month]).toBeGreaterThanOrEqual(Math.min(...warm) - 1e-9)
          expect(climate.meanC[month]).toBeLessThanOrEqual(Math.max(...warm) + 1e-9)
          // Months of low sun are capped or left out and have no such bounds.
          const clear = used.map((one) => {
            const h0 = monthlyExtraterrestrialWhM2Day(one.place.latitudeDeg)[month]!
            return h0 >= 300 ? one.record.ghiWhM2Day[month]! / h0 : undefined
          })
          const bounds = clear.every((one) => one !== undefined) ? clear : [0, 0.8]
          expect(climate.clearness[month]).toBeGreaterThanOrEqual(Math.min(...bounds) - 1e-9)
          expect(climate.clearness[month]).toBeLessThanOrEqual(Math.max(...bounds) + 1e-9)
        }
      }),
      { numRuns: 150 },
    )
  })

  it('is sound on the spot of every site', () => {
    for (const one of climateSites()) {
      const { climate } = nearby({ ...one })
      expect(climate.sites.length).toBeGreaterThan(0)
      expectSound(climate)
    }
  })
})

describe('what is said of doubtful sites', () => {
  it('names a flagged site within 40 km even where it hardly counts, used or left out', () => {
    for (const one of climateSites().filter((each) => each.flags.some((flag) => flag.startsWith('ghi_nbr')))) {
      // 35 km north of it.
      const house = { latitudeDeg: one.latitudeDeg + 0.315, longitudeDeg: one.longitudeDeg }
      const { climate, worksheet } = nearby(house)
      const named = worksheet
        .result(0)
        .findings.filter((each) => ['climate.station-flagged', 'climate.near-site-left-out'].includes(each.id))
      const used = climate.sites.some((each) => each.wmo === one.wmo)
      const said = named.filter((each) => each.severity === 'warning' && each.message.includes(one.name))
      // A dense neighbourhood may have eight nearer ones.
      const nearer = poolSites().filter(
        (each) =>
          distanceKm(house.latitudeDeg, house.longitudeDeg, each.latitudeDeg, each.longitudeDeg) <
          distanceKm(house.latitudeDeg, house.longitudeDeg, one.latitudeDeg, one.longitudeDeg),
      )
      expect(used || nearer.length < 8 ? said.length : 1, one.name).toBeGreaterThan(0)
      if (used) expect(climate.sites.find((each) => each.wmo === one.wmo)!.flags).not.toEqual([])
    }
  })

  it('says when the clock of a typical year is wrong, and takes mornings from the others', () => {
    const place = { latitudeDeg: 46.77, longitudeDeg: -100.75 }
    const { ids, climate, worksheet } = nearby(place)
    expect(climate.sites.map((one) => one.wmo)).toContain('727640')
    expect(ids).toContain('climate.site-clock-wrong')
    expect(climate.morning).toBeDefined()
    expect(worksheet.result(0).assumptions.map((one) => one.path)).not.toContain('site.climate.day_shape')
    const single = new Worksheet()
    expect(stationClimate('727640', place, single).morning).toBeUndefined()
    expect(single.result(0).assumptions.map((one) => one.path)).toContain('site.climate.day_shape')
    expect(single.result(0).findings.find((one) => one.id === 'climate.site-clock-wrong')?.severity).toBe('warning')
  })

  it('smooths the mornings of sites over the months with 1/4, 1/2 and 1/4', () => {
    const { ghi } = stationClimate('722950', site('722950'), new Worksheet()).morning!
    const own = siteQuality(site('722950')).morningGhi
    expect(ghi[0]).toBeCloseTo(own[11]! / 4 + own[0]! / 2 + own[1]! / 4, 12)
    expect(ghi[5]).toBeCloseTo(own[4]! / 4 + own[5]! / 2 + own[6]! / 4, 12)
  })

  it('says beyond 66 deg that mean days stand badly for their months', () => {
    expect(nearby({ latitudeDeg: 71.3, longitudeDeg: -156.8 }).ids).toContain('climate.polar')
    expect(nearby({ latitudeDeg: 65, longitudeDeg: -147 }).ids).not.toContain('climate.polar')
  })

  it('takes a station without design temperatures when it is named', () => {
    const leadville = poolSites().find((one) => one.name.startsWith('LEADVILLE'))!
    expect(climateSites()).not.toContain(leadville)
    expect(stationClimate(leadville.wmo, leadville, new Worksheet()).sites[0]!.wmo).toBe(leadville.wmo)
  })
})

describe('stationClimate', () => {
  it('warns of a height that differs by more than 400 m', () => {
    const one = site('724880')
    const warns = (aboveM: number): boolean => {
      const worksheet = new Worksheet()
      stationClimate('724880', { ...one, elevationM: one.elevationM + aboveM }, worksheet)
      return worksheet.result(0).findings.some((finding) => finding.id === 'climate.site-height')
    }
    expect([399, 401, -399, -401].map(warns)).toEqual([false, true, false, true])
  })

  it('gives back the sunshine and temperature of a site for a house on the spot', () => {
    const one = site('727450')
    const climate = stationClimate('727450', one, new Worksheet())
    const record = siteRecord(one)
    for (let month = 0; month < 12; month++) {
      expect(climate.ghiWhM2Day[month]).toBeCloseTo(record.ghiWhM2Day[month]!, 6)
      expect(climate.dhiWhM2Day[month]).toBeCloseTo(record.dhiWhM2Day[month]!, 6)
      expect(climate.meanC[month]).toBeCloseTo(record.meanC[month]!, 9)
    }
    expect(climate.spreadRel).toBe(0)
    expect(climate.sites).toHaveLength(1)
  })

  it('warns about a flagged station in words', () => {
    const worksheet = new Worksheet()
    stationClimate('912850', site('912850'), worksheet)
    const finding = worksheet.result(0).findings.find((one) => one.id === 'climate.station-flagged')
    expect(finding?.message).toContain('16 % below the median of its nearest sites')
  })

  it('refuses an unknown station and names the nearest ones', () => {
    const place = { latitudeDeg: 47.6, longitudeDeg: -122.3 }
    const error = refusal(() => stationClimate('000000', place, new Worksheet()))
    expect(error.message).toContain("'000000'")
    expect(error.fix).toContain('727930')
  })

  it('refuses a station more than 500 km away', () => {
    expect(() => stationClimate('727450', { latitudeDeg: 33, longitudeDeg: -112 }, new Worksheet())).toThrow(
      /at most 500 km/,
    )
  })
})

describe('siteClimate', () => {
  const place = { latitude_deg: 40, longitude_deg: -100, elevation_ft: 2400, utc_offset_h: -6 }
  it('takes nearby sites when the project says nothing, and says that', () => {
    const worksheet = new Worksheet()
    const climate = siteClimate(place, undefined, worksheet)
    expect(climate).toMatchObject({ kind: 'monthly', elevationM: 2400 * 0.3048, utcOffsetH: -6 })
    expect(worksheet.result(0).assumptions.map((one) => one.path)).toEqual([
      'site.climate',
      'site.climate.temperature_lapse',
    ])
  })
  it('takes the station that the project names', () => {
    const climate = siteClimate(
      { ...place, climate: { station: '725520' } },
      undefined,
      new Worksheet(),
    ) as MonthlyClimate
    expect(climate.sites.map((one) => one.wmo)).toEqual(['725520'])
  })
  it('refuses to go on without the text of the weather file', () => {
    expect(() => siteClimate({ ...place, climate: { epw: 'a.epw' } }, undefined, new Worksheet())).toThrow(StageError)
  })
})
