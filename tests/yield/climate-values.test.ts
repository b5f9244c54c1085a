import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { estimateYield, type YieldValues } from '../../src/yield/index.js'

const EPW = readFileSync(
  new URL('../../examples/weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw', import.meta.url),
  'utf8',
)

function climateOf(site: Project['site']): YieldValues['climate'] {
  const project: Project = {
    format: 'gablewatt/2',
    title: 'climate of the place',
    site,
    roof_planes: { p: { azimuth_deg: 180, tilt_deg: 25 } },
    arrays: { a: { roof_plane: 'p', module: 'm', inverter: 'i', modules: 4, mounting: 'near_roof', standoff_in: 4 } },
    equipment: {
      modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35 } },
      inverters: { i: { kind: 'module_level', ac_power_w: 400, weighted_efficiency_pct: 97 } },
    },
    losses: { snow_pct: 0 },
  }
  return estimateYield(project, new Map([['w.epw', EPW]])).values.climate
}

describe('values.climate', () => {
  it('tells sites, weights, flags and how well they stand for the house', () => {
    const { sites, siting_error_pct } = climateOf({ latitude_deg: 19.717, longitude_deg: -155.05, elevation_ft: 40 })
    expect(siting_error_pct).toBeCloseTo(6.2, 9)
    expect(sites).toHaveLength(8)
    expect(sites[0]).toMatchObject({ wmo: '912850', name: 'HILO INTERNATIONAL AP, HI' })
    expect(sites[0]!.flag).toMatch(/16 % below the median of its nearest sites/)
    expect(sites.filter((site) => site.flag === null).length).toBeGreaterThan(3)
    expect(sites.reduce((sum, site) => sum + site.weight, 0)).toBeCloseTo(1, 12)
  })
  it('has no siting error with a weather file', () => {
    const climate = climateOf({ latitude_deg: 47.46, longitude_deg: -122.31, climate: { epw: 'w.epw' } })
    expect(climate).toMatchObject({ kind: 'hourly', siting_error_pct: 0, sites: [] })
  })
  it('has the noise of one station where one is chosen', () => {
    const place = { latitude_deg: 42.36, longitude_deg: -71.01 }
    expect(climateOf({ ...place, climate: { station: '725090' } }).siting_error_pct).toBeCloseTo(5.76, 9)
    expect(climateOf(place).siting_error_pct).toBeLessThan(5)
  })
})
