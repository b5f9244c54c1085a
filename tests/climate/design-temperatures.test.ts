import { describe, expect, it } from 'vitest'
import { climateSites, designTemperatures, siteRecord } from '../../src/climate/index.js'
import { Worksheet } from '../../src/worksheet/index.js'

type DesignSite = Parameters<typeof designTemperatures>[0]

const run = (site: DesignSite) => {
  const worksheet = new Worksheet()
  const values = designTemperatures(site, worksheet)
  return { values, result: worksheet.result(values) }
}
const at = (wmo: string, aboveM?: number): DesignSite => {
  const site = climateSites().find((one) => one.wmo === wmo)!
  const place = { latitude_deg: site.latitudeDeg, longitude_deg: site.longitudeDeg }
  return aboveM === undefined ? place : { ...place, elevation_ft: (site.elevationM + aboveM) / 0.3048 }
}

describe('designTemperatures', () => {
  it('takes the nearest site', () => {
    const { values } = run(at('727930', 0))
    expect(values.extremeLow).toMatchObject({ valueC: -6.3, estimated: false })
    expect(values.high0p4pct).toMatchObject({ valueC: 29.4, estimated: false })
    expect(values.extremeLow?.from).toContain('SEATTLE-TACOMA')
  })

  it('corrects for height on the safe side only', () => {
    // 200 m above the station: 1.3 K colder, but the highs stay; 200 m below: 1.3 K hotter, but the low stays.
    const above = run(at('727930', 200)).values
    expect(above.extremeLow?.valueC).toBe(-7.6)
    expect(above.high0p4pct?.valueC).toBe(29.4)
    const below = run(at('727930', -100)).values
    expect(below.extremeLow?.valueC).toBe(-6.3)
    // 29.4 + 0.65 = 30.05, rounded up.
    expect(below.high0p4pct?.valueC).toBe(30.1)
  })

  it('is never warmer than the site in the cold nor colder in the heat, at any height', () => {
    const record = siteRecord(climateSites().find((one) => one.wmo === '727450')!)
    for (let aboveM = -600; aboveM <= 2000; aboveM += 137) {
      const { values } = run(at('727450', aboveM))
      expect(values.extremeLow!.valueC).toBeLessThanOrEqual(record.extremeLowC!)
      expect(values.high2pct!.valueC).toBeGreaterThanOrEqual(record.high2pctC)
      expect(values.high0p4pct!.valueC).toBeGreaterThanOrEqual(record.high0p4pctC)
    }
  })

  it('prefers what the project states and cites it', () => {
    const stated = { extreme_low_c: -9, high_2pct_c: 33, source: 'table of the county' }
    const { values, result } = run({ ...at('727930', 0), design_temperatures: stated })
    expect(values.extremeLow).toEqual({ valueC: -9, estimated: false, from: 'project file: table of the county' })
    expect(values.high2pct?.valueC).toBe(33)
    expect(values.high0p4pct?.valueC).toBe(29.4)
    const step = result.worksheet.find((one) => one.id === 'climate.extreme-low')
    expect(step?.source).toEqual({ document: 'table of the county', standing: 'project file' })
  })

  it('says +-2 deg C about an estimated extreme low', () => {
    // Boeing Field has an estimated extreme low.
    const { values, result } = run(at('727935', 0))
    expect(values.extremeLow?.estimated).toBe(true)
    const finding = result.findings.find((one) => one.id === 'climate.extreme-low-estimated')
    expect(finding).toMatchObject({ severity: 'warning', where: 'site.design_temperatures.extreme_low_c' })
    expect(finding?.message).toContain('+-2 deg C')
  })

  it('passes over sites without an extreme low', () => {
    const without = climateSites().find((one) => one.name === 'ANAKTUVUK PASS')!
    expect(siteRecord(without).extremeLowC).toBeUndefined()
    const { values } = run(at(without.wmo, 0))
    expect(values.extremeLow?.from).not.toContain('ANAKTUVUK')
    expect(values.high0p4pct?.from).toContain('ANAKTUVUK')
  })

  it('explains the flag of places with a late summer', () => {
    const late = climateSites().find((one) => one.flags.includes('jja_high?') && siteRecord(one).high2pctEstimated)!
    const finding = run(at(late.wmo, 0)).result.findings.find((one) => one.id === 'climate.high-2pct-estimated')
    expect(finding?.message).toContain('2.3 deg C too high')
  })

  it('warns when the site is far, high, or the height of the house unknown', () => {
    const far = run({ latitude_deg: 38.5, longitude_deg: -110.5, elevation_ft: 9000 }).result.findings.map(
      (one) => one.id,
    )
    expect(far).toContain('climate.design-site-far')
    expect(far).toContain('climate.design-site-height')
    expect(far.filter((id) => id === 'climate.design-site-far')).toHaveLength(1)
    expect(run(at('727930')).result.findings.map((one) => one.id)).toContain('climate.design-height-unknown')
  })

  it('gives nothing outside the reach of the table', () => {
    const { values } = run({ latitude_deg: 51.5, longitude_deg: 0 })
    expect(values).toEqual({ extremeLow: undefined, high2pct: undefined, high0p4pct: undefined })
  })

  it('records a step for each value that reproduces it', () => {
    const { result } = run(at('727935', 250))
    for (const id of ['climate.extreme-low', 'climate.high-2pct', 'climate.high-0p4pct']) {
      const step = result.worksheet.find((one) => one.id === id)!
      const [site, height] = step.inputs.map((one) => Number(one.value)) as [number, number]
      const corrected = site + 0.0065 * height
      const safe = id === 'climate.extreme-low' ? Math.min(site, corrected) : Math.max(site, corrected)
      expect(Math.abs(Number(step.result.value) - safe)).toBeLessThan(0.1)
    }
  })
})
