import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { estimateYield } from '../../src/yield/index.js'

const EPW = readFileSync(
  new URL('../../examples/weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw', import.meta.url),
  'utf8',
)
const SNOW = {
  monthly_snowfall_in: [10, 8, 2, 0, 0, 0, 0, 0, 0, 0, 3, 9],
  monthly_snow_events: [4, 3, 1, 0, 0, 0, 0, 0, 0, 0, 1, 3],
}

function house(change: (project: Project) => void): Project {
  const project: Project = {
    format: 'gablewatt/2',
    title: 'snow',
    site: { latitude_deg: 47.46, longitude_deg: -122.31, elevation_ft: 400 },
    roof_planes: { south: { azimuth_deg: 180, tilt_deg: 25, eave_height_ft: 10 } },
    arrays: {
      south: { roof_plane: 'south', module: 'm', inverter: 'i', modules: 8, mounting: 'near_roof', standoff_in: 4 },
    },
    equipment: {
      modules: { m: { pmax_w: 400, pmax_temp_coeff_pct_per_c: -0.35, length_in: 68 } },
      inverters: { i: { kind: 'module_level', ac_power_w: 380, weighted_efficiency_pct: 97 } },
    },
  }
  change(project)
  return project
}

const lost = (project: Project): number => {
  const { ladder } = estimateYield(project, new Map([['w.epw', EPW]])).values
  return 1 - ladder.snow / ladder.dirt
}

describe('snow in the estimate', () => {
  it('is the percentages that the project states, whatever else is known', () => {
    const some = house((project) => {
      project.losses = { snow_pct: 5 }
      Object.assign(project.site, SNOW)
    })
    expect(lost(some)).toBeCloseTo(0.05, 9)
    expect(lost(house((project) => (project.losses = { snow_pct: 0 })))).toBe(0)
  })

  it('comes from stated snowfall with either climate when the weather file knows no snow depth', () => {
    const monthly = lost(house((project) => Object.assign(project.site, SNOW)))
    const hourly = lost(house((project) => Object.assign(project.site, SNOW, { climate: { epw: 'w.epw' } })))
    expect(monthly).toBeGreaterThan(0.002)
    expect(hourly).toBeGreaterThan(0.002)
    expect(Math.abs(monthly - hourly)).toBeLessThan(0.3 * monthly)
  })

  it('is missed aloud in a cold climate without snow data', () => {
    const cold = house((project) =>
      Object.assign(project.site, { latitude_deg: 46.84, longitude_deg: -92.18, elevation_ft: 1400 }),
    )
    const said = estimateYield(cold).findings.find((finding) => finding.id === 'yield.snow-not-counted')!
    expect(said.severity).toBe('warning')
    // Normals of the airport: 19.4 in in January, 86.1 in a year.
    expect(said.message).toMatch(/about 86\.1 in of snow/)
    expect(said.message).toContain('Jan 19.4, Feb 12.4')
    expect(said.message).not.toContain('Jun')
    expect(said.message).toMatch(/DULUTH INTERNATIONAL ARPT, MN, 1 km away|DULUTH.*, MN, \d+ km away/)
    expect(lost(cold)).toBe(0)
  })

  it('is a note where little falls, and nothing where none does', () => {
    const at = (latitude: number, longitude: number) =>
      estimateYield(
        house((project) =>
          Object.assign(project.site, { latitude_deg: latitude, longitude_deg: longitude, elevation_ft: 300 }),
        ),
      ).findings.find((finding) => finding.id === 'yield.snow-not-counted')
    expect(at(33.63, -84.44)?.severity).toBe('note')
    expect(at(27.97, -82.53)).toBeUndefined()
  })

  it('says when the number of snowfalls stands for itself', () => {
    const without = house((project) => Object.assign(project.site, { monthly_snowfall_in: SNOW.monthly_snowfall_in }))
    const paths = (project: Project): string[] => estimateYield(project).assumptions.map((one) => one.path)
    expect(paths(without)).toContain('site.monthly_snow_events')
    expect(paths(house((project) => Object.assign(project.site, SNOW)))).not.toContain('site.monthly_snow_events')
  })
})
